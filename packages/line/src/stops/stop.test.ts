/** Timelines of stops, worked out by hand from MODEL.md §7 and §1 ("within one instant"). Unless a test says otherwise the drive is that of smallLoop. */
import { describe, expect, test } from 'vitest'
import { type StopWish, smallLoop, tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

const GIVEN = { move: 4, clear: 3 }
const zoneStop = (zone: number, after: number, repair: number, clock: 'operating' | 'calendar' = 'calendar'): StopWish => ({
  name: 'jam',
  on: { kind: 'zone', index: zone },
  clock,
  after,
  repair,
})
const stationStop = (after: StopWish['after'], repair: number, clock: 'operating' | 'calendar' = 'calendar', name = 'wear'): StopWish => ({
  name,
  on: { kind: 'station', index: 0 },
  clock,
  after,
  repair,
})
const lineStop = (after: number, repair: number, clock: 'operating' | 'calendar' = 'calendar'): StopWish => ({
  name: 'all',
  on: { kind: 'section', index: 0 },
  clock,
  after,
  repair,
})

describe('a freeze in mid-move', () => {
  const driving = (stop: StopWish, until = 9.5) =>
    timeline(smallLoop({ zones: 4, start: [0], stops: [stop], until }), 'leave', 'clear', 'rest')

  test('both times of the move stand still and go on with what they had left', () => {
    // Z1 stopped from 2 to 5: clear had 0.5 left: 5.5; look had 3 left: 8, at speed; clear of Z1 8 + 1.5
    expect(driving(zoneStop(1, 2, 3))).toEqual(['0 leave Z0 c0', '5.5 clear Z0', '8 leave Z1 c0 at speed', '9.5 clear Z1'])
  })

  test('a stop of the zone that is left holds the move too, until the carrier has arrived', () => {
    // Z0 stopped from 1 to 3: 2 s later; clear 4.5, look 7, clear 8.5
    expect(driving(zoneStop(0, 1, 2))).toEqual(['0 leave Z0 c0', '4.5 clear Z0', '7 leave Z1 c0 at speed', '8.5 clear Z1'])
    // Z0 stopped from 3 to 4, when it is clear already: the move is still in progress, look at 6
    expect(driving(zoneStop(0, 3, 1))).toEqual(['0 leave Z0 c0', '2.5 clear Z0', '6 leave Z1 c0 at speed', '7.5 clear Z1'])
  })

  test('a stop of the zone after the next one does not: the look fails and the carrier waits at rest', () => {
    // Z2 stopped from 1 to 7: look at Z1 at 5 fails, rest at 6, leaves at 7, from rest: clear 9.5
    expect(driving(zoneStop(2, 1, 6))).toEqual(['0 leave Z0 c0', '2.5 clear Z0', '6 rest Z1 c0', '7 leave Z1 c0', '9.5 clear Z1'])
  })

  test('braking stands still like the rest of the move', () => {
    // c1 loads in Z2 from 6 to 26. c0 leaves Z0 at 2.5, looks at 7.5, should be at rest at 8.5. Z1 stopped from 8 to 12: 0.5 s of braking left: 12.5.
    const spec = smallLoop({ zones: 4, start: [0, 1], stations: [{ at: 2, load: 20 }], stops: [zoneStop(1, 8, 4)], until: 13 })
    expect(timeline(spec, 'look', 'brake', 'rest', 'stop', 'repaired')).toEqual([
      '6 rest Z2 c1',
      '7.5 look Z1 c0',
      '7.5 brake Z1 c0',
      '8 stop jam',
      '12 repaired jam',
      '12.5 rest Z1 c0',
    ])
  })

  test('two stops that overlap hold until the last one ends', () => {
    // Z0 stopped 1 to 3, Z1 stopped 2 to 6: the move stands from 1 to 6, with 1.5 s to clear and 4 s to the look left
    const stops = [zoneStop(0, 1, 2), { ...zoneStop(1, 2, 4), name: 'other' }]
    expect(timeline(smallLoop({ zones: 4, start: [0], stops, until: 10 }), 'leave', 'clear')).toEqual([
      '0 leave Z0 c0',
      '7.5 clear Z0',
      '10 leave Z1 c0 at speed',
    ])
  })
})

describe('a stop at the very instant of an end', () => {
  const given = (stop: StopWish, until = 8) =>
    timeline(smallLoop({ zones: 4, start: [0], ...GIVEN, stops: [stop], until }), 'leave', 'clear', 'rest')

  test('an arrival due then happens; the next move does not begin', () => {
    expect(given(zoneStop(1, 4, 2))).toEqual(['0 leave Z0 c0', '3 clear Z0', '4 rest Z1 c0', '6 leave Z1 c0'])
  })

  test('a clear due then happens; the arrival stands still', () => {
    // 1 s to the arrival left at 3: 5 + 1
    expect(given(zoneStop(1, 3, 2))).toEqual(['0 leave Z0 c0', '3 clear Z0', '6 rest Z1 c0', '6 leave Z1 c0'])
  })

  test('work due then ends; neither the next duty nor the release begins', () => {
    // load 4 to 8, stopped at 8 for 3: work 11 to 13, stopped at 13 (2 s after the repair) for 3: release 16 to 17
    const spec = smallLoop({
      zones: 4,
      start: [0],
      ...GIVEN,
      stations: [{ at: 1, load: 4, work: 2, release: 1 }],
      stops: [stationStop([8, 2, 1000], 3)],
      until: 17,
    })
    expect(timeline(spec).filter((line) => !/Z|take/.test(line))).toEqual([
      '4 load begins S1 c0',
      '8 stop wear',
      '8 load ends S1 c0',
      '11 repaired wear',
      '11 work begins S1 c0',
      '13 stop wear',
      '13 work ends S1 c0',
      '16 repaired wear',
      '16 release begins S1 c0',
      '17 release ends S1 c0',
    ])
  })

  test('a stop that ends when something is due to start holds nothing', () => {
    expect(given(zoneStop(2, 1, 3))).toEqual([
      '0 leave Z0 c0',
      '3 clear Z0',
      '4 rest Z1 c0',
      '4 leave Z1 c0',
      '7 clear Z1',
      '8 rest Z2 c0',
      '8 leave Z2 c0',
    ])
  })

  test('a stop of no length changes nothing', () => {
    expect(given(zoneStop(1, 4, 0))).toEqual(given(zoneStop(3, 99, 1)))
    expect(given(zoneStop(1, 2, 0))).toEqual(given(zoneStop(3, 99, 1)))
  })
})

describe('a stop that begins at the look', () => {
  const looking = (stop: StopWish) =>
    timeline(smallLoop({ zones: 4, start: [0], stops: [stop], until: 9 }), 'leave', 'look', 'brake', 'rest').slice(1)

  test('of the zone entered: the look happens and fails; braking begins when the hold ends', () => {
    expect(looking(zoneStop(1, 5, 3))).toEqual(['5 look Z1 c0', '5 brake Z1 c0', '9 rest Z1 c0', '9 leave Z1 c0'])
  })

  test('of the zone ahead: the look fails, the carrier brakes and waits', () => {
    expect(looking(zoneStop(2, 5, 3))).toEqual(['5 look Z1 c0', '5 brake Z1 c0', '6 rest Z1 c0', '8 leave Z1 c0'])
  })

  test('of the zone behind: nothing holds the zone entered or the one ahead, the carrier passes', () => {
    expect(looking(zoneStop(0, 5, 3))).toEqual(['5 look Z1 c0', '5 leave Z1 c0 at speed', '9 look Z2 c0', '9 leave Z2 c0 at speed'])
  })

  test('a hold of the zone ahead that ends at the look lets it pass', () => {
    expect(looking(zoneStop(2, 1, 4)).slice(0, 2)).toEqual(['5 look Z1 c0', '5 leave Z1 c0 at speed'])
  })
})

describe('several sources', () => {
  test('two on one station, overlapping: held from the first to the last, each counts its whole time', () => {
    // load in Z1 from 4, 10 s: 2 done at 6; A down 6 to 11, B down 9 to 13; 8 s left: 21
    const spec = smallLoop({
      zones: 4,
      start: [0],
      ...GIVEN,
      stations: [{ at: 1, load: 10 }],
      stops: [stationStop(6, 5, 'calendar', 'A'), stationStop(9, 4, 'calendar', 'B')],
      until: 21,
    })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => !/Z0|take/.test(line))).toEqual([
      '4 rest Z1 c0',
      '4 load begins S1 c0',
      '6 stop A',
      '9 stop B',
      '11 repaired A',
      '13 repaired B',
      '21 load ends S1 c0',
      '21 leave Z1 c0',
    ])
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 10, exchanging: 4, stopped: 7 })
    expect(result.stations[0]!.stoppedBy).toEqual([
      { cause: 'A', seconds: 5 },
      { cause: 'B', seconds: 4 },
    ])
    expect(result.breakdowns).toEqual([
      { name: 'A', count: 1, seconds: 5 },
      { name: 'B', count: 1, seconds: 4 },
    ])
    // the zone is not stopped by its station: worked on from 4 to 21, also while held; and so is the carrier
    expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 4, working: 17 })
    expect(spent(result.carriers[0]!.seconds)).toEqual({ moving: 4, 'worked on': 17 })
  })

  test('one that ends when the other begins: nothing goes on between them', () => {
    // A 6 to 9, B 9 to 11: load 4–6 and 11–19
    const spec = (names: [string, string]) =>
      smallLoop({
        zones: 4,
        start: [0],
        ...GIVEN,
        stations: [{ at: 1, load: 10, release: 1 }],
        stops: names.map((name) => (name === 'A' ? stationStop(6, 3, 'calendar', 'A') : stationStop(9, 2, 'calendar', 'B'))),
        until: 20,
      })
    for (const names of [['A', 'B'] as const, ['B', 'A'] as const]) {
      const { result, lines } = tell(spec([...names]))
      expect(lines.filter((line) => /S1/.test(line))).toEqual([
        '4 load begins S1 c0',
        '19 load ends S1 c0',
        '19 release begins S1 c0',
        '20 release ends S1 c0',
      ])
      expect(result.stations[0]!.seconds.stopped).toBe(5)
      expect(result.stations[0]!.stoppedBy.map(({ seconds }) => seconds).sort()).toEqual([2, 3])
    }
  })

  test('a calendar clock runs through the stop of another source, and anew from its own repair', () => {
    // A down 3 to 13. B down 8 to 10 and, after 4, 14 to 16. The carrier arrives at 4; load 13–14 and 16–25.
    const spec = smallLoop({
      zones: 4,
      start: [0],
      ...GIVEN,
      stations: [{ at: 1, load: 10 }],
      stops: [stationStop(3, 10, 'calendar', 'A'), stationStop([8, 4, 1000], 2, 'calendar', 'B')],
      until: 25,
    })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => /stop|repaired|load/.test(line))).toEqual([
      '3 stop A',
      '8 stop B',
      '10 repaired B',
      '13 repaired A',
      '13 load begins S1 c0',
      '14 stop B',
      '16 repaired B',
      '25 load ends S1 c0',
    ])
    // held while nobody is there, too: stopped from 3 on
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 10, exchanging: 3, stopped: 12 })
    expect(result.breakdowns[1]).toEqual({ name: 'B', count: 2, seconds: 4 })
  })
})

describe('a stop of the line', () => {
  test('holds every move and no work; a carrier that is done in a held zone makes its station stopped', () => {
    // c0 loads in Z1 from 4 to 14. Stopped from 12 to 17: load ends at 14, out at 17.
    const spec = smallLoop({ zones: 4, start: [0], ...GIVEN, stations: [{ at: 1, load: 10 }], stops: [lineStop(12, 5)], until: 17 })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => /load|leave|all/.test(line))).toEqual([
      '0 leave Z0 c0',
      '4 load begins S1 c0',
      '12 stop all',
      '14 load ends S1 c0',
      '17 repaired all',
      '17 leave Z1 c0',
    ])
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 10, exchanging: 4, stopped: 3 })
    expect(result.stations[0]!.stoppedBy).toEqual([{ cause: 'all', seconds: 3 }])
    // every zone is stopped for 5 s, whatever it does; Z1 is worked on from 4 to 12
    expect(result.zones.map((zone) => zone.seconds.stopped)).toEqual([5, 5, 5, 5])
    expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 4, working: 8, stopped: 5 })
  })

  test('two moves at once stand still together', () => {
    // c0 and c1 move from 0; stopped from 2 to 7
    const spec = smallLoop({ zones: 6, start: [0, 3], ...GIVEN, stops: [lineStop(2, 5)], until: 9 })
    expect(timeline(spec, 'clear', 'rest')).toEqual(['8 clear Z0', '8 clear Z3', '9 rest Z1 c0', '9 rest Z4 c1'])
  })
})
