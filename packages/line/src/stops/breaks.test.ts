/** Timelines of breaks, worked out by hand from MODEL.md §7. Moves of 4 s and clears of 3 s are given; a load of 6 s in Z1. */
import { describe, expect, test } from 'vitest'
import { type StopWish, smallLoop, tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

const GIVEN = { move: 4, clear: 3 }
const stationStop = (after: number, repair: number): StopWish => ({
  name: 'wear',
  on: { kind: 'station', index: 0 },
  clock: 'calendar',
  after,
  repair,
})

describe('breaks', () => {
  const LOAD = { at: 1, load: 6 }
  const twoCarriers = (wish: { conveyorStops?: boolean; worksInBreaks?: boolean; automatic?: boolean; break?: [number, number] }) =>
    smallLoop({
      zones: 4,
      start: [0, 3],
      ...GIVEN,
      stations: [{ ...LOAD, worksInBreaks: wish.worksInBreaks ?? false, automatic: wish.automatic ?? wish.worksInBreaks ?? false }],
      breaks: [wish.break ?? [5, 4]],
      conveyorStops: wish.conveyorStops ?? false,
      until: 17,
    })

  test('the conveyor goes on: work stands still', () => {
    // c0 loads 4–5 and 9–14, out at 14, clear 17. c1 leaves Z3 at 3, is in Z0 at 7, leaves at 17.
    const { result, lines } = tell(twoCarriers({}))
    expect(lines.filter((line) => /leave|rest|break|load/.test(line))).toEqual([
      '0 leave Z0 c0',
      '3 leave Z3 c1',
      '4 rest Z1 c0',
      '4 load begins S1 c0',
      '5 break begins',
      '7 rest Z0 c1',
      '9 break ends',
      '14 load ends S1 c0',
      '14 leave Z1 c0',
      '17 leave Z0 c1',
    ])
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 6, exchanging: 4 + 3, break: 4 })
    expect(result.breaks).toEqual({ count: 1, seconds: 4 })
    expect(result.zones.map((zone) => zone.seconds.stopped)).toEqual([0, 0, 0, 0])
  })

  test('the conveyor stops too: moves stand still as well', () => {
    // c1 has 2 s left at 5: in Z0 at 11
    const { result, lines } = tell(twoCarriers({ conveyorStops: true }))
    expect(lines.filter((line) => /leave|rest/.test(line))).toEqual([
      '0 leave Z0 c0',
      '3 leave Z3 c1',
      '4 rest Z1 c0',
      '11 rest Z0 c1',
      '14 leave Z1 c0',
      '17 leave Z0 c1',
    ])
    expect(result.zones.map((zone) => zone.seconds.stopped)).toEqual([4, 4, 4, 4])
    expect(result.zones[2]!.stoppedBy).toEqual([{ cause: 'break', seconds: 4 }])
  })

  test('an automatic station stops in breaks, unless it works in breaks', () => {
    const loads = (wish: Parameters<typeof twoCarriers>[0]) => timeline(twoCarriers(wish), 'load', 'leave')
    expect(loads({ automatic: true })).toEqual(loads({}))
    // load 4–10, out at 10, clear 13: c1 leaves at 13; its load begins at 17
    expect(loads({ worksInBreaks: true })).toEqual([
      '0 leave Z0 c0',
      '3 leave Z3 c1',
      '4 load begins S1 c0',
      '10 load ends S1 c0',
      '10 leave Z1 c0',
      '13 leave Z0 c1',
      '14 leave Z2 c0',
      '17 load begins S1 c1',
    ])
  })

  test('a station that works in breaks has no break; with the conveyor stopped its done carrier makes it stopped', () => {
    // break 5 to 13: load 4–10; held until 13
    const { result, lines } = tell(twoCarriers({ worksInBreaks: true, conveyorStops: true, break: [5, 8] }))
    expect(lines).toContain('13 leave Z1 c0')
    // exchanging 0–4, working 4–10, stopped 10–13, out until 16; c1 has 2 s left at 5: in Z0 at 15, leaves when Z1 is clear at 16
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 6, exchanging: 4 + 4, stopped: 3 })
    expect(result.stations[0]!.stoppedBy).toEqual([{ cause: 'break', seconds: 3 }])
  })

  test('a break that begins when work ends: the release waits', () => {
    // load 4–10, break 10–15, release 15–16
    const spec = smallLoop({ zones: 4, start: [0], ...GIVEN, stations: [{ ...LOAD, release: 1 }], breaks: [[10, 5]], until: 16 })
    expect(timeline(spec).filter((line) => /S1|break|leave Z1/.test(line))).toEqual([
      '4 load begins S1 c0',
      '10 break begins',
      '10 load ends S1 c0',
      '15 break ends',
      '15 release begins S1 c0',
      '16 release ends S1 c0',
      '16 leave Z1 c0',
    ])
  })

  test('a carrier that arrives in a break begins when it ends', () => {
    const spec = smallLoop({ zones: 4, start: [0], ...GIVEN, stations: [LOAD], breaks: [[2, 5]], until: 13 })
    expect(timeline(spec, 'rest', 'load')).toEqual(['4 rest Z1 c0', '7 load begins S1 c0', '13 load ends S1 c0'])
  })

  test('of two adjacent breaks nothing begins between them', () => {
    // 5 to 9 and 9 to 12: load 4–5 and 12–17
    const spec = smallLoop({
      zones: 4,
      start: [0],
      ...GIVEN,
      stations: [LOAD],
      breaks: [
        [5, 4],
        [9, 3],
      ],
      until: 17,
    })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => /S1/.test(line))).toEqual(['4 load begins S1 c0', '17 load ends S1 c0'])
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 6, exchanging: 4, break: 7 })
    expect(result.breaks).toEqual({ count: 2, seconds: 7 })
  })

  test('repairs go on in breaks, and the break goes before the stop in the station time', () => {
    // stopped 6 to 12, break 8 to 10: load 4–6 and 12–16
    const spec = smallLoop({
      zones: 4,
      start: [0],
      ...GIVEN,
      stations: [LOAD],
      stops: [stationStop(6, 6)],
      breaks: [[8, 2]],
      until: 16,
    })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => /S1/.test(line))).toEqual(['4 load begins S1 c0', '16 load ends S1 c0'])
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 6, exchanging: 4, stopped: 4, break: 2 })
    expect(result.breakdowns[0]).toEqual({ name: 'wear', count: 1, seconds: 6 })
  })

  test('where a breakdown and a break overlap each cause counts its whole time', () => {
    const spec = smallLoop({
      zones: 4,
      start: [0],
      ...GIVEN,
      stations: [LOAD],
      stops: [stationStop(6, 6)],
      breaks: [[8, 2]],
      until: 16,
    })
    expect(tell(spec).result.stations[0]!.stoppedBy).toEqual([
      { cause: 'wear', seconds: 6 },
      { cause: 'break', seconds: 2 },
    ])
  })

  test('a stop that begins in the window counts once, one under way at its start counts its seconds', () => {
    // down 6 to 12, window (8, 16]: 4 s, none begun
    const spec = smallLoop({ zones: 4, start: [0], ...GIVEN, stations: [LOAD], stops: [stationStop(6, 6)], warmup: 8, until: 16 })
    expect(tell(spec).result.breakdowns[0]).toEqual({ name: 'wear', count: 0, seconds: 4 })
    const cut = smallLoop({ zones: 4, start: [0], ...GIVEN, stations: [LOAD], stops: [stationStop(6, 6)], until: 9 })
    expect(tell(cut).result.breakdowns[0]).toEqual({ name: 'wear', count: 1, seconds: 3 })
  })
})
