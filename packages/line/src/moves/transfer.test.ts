/** Timelines of transfers, worked out by hand from MODEL.md §4. Where nothing else is said: lift 2 s, lower 1.5 s, moves of 4 s and clears of 3 s given. */
import { describe, expect, test } from 'vitest'
import { smallLoop, tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

const GIVEN = { move: 4, clear: 3 }
const CORNER = { lift: 2, lower: 1.5 }

describe('position changes', () => {
  test('low to high: lift while the carrier stands, lower when the zone is clear', () => {
    // by the drive: a change always stops, M(rest, rest) = 6; sensor of a transfer at its stop point: C(rest) = 2 + 1 + 0.5 = 3.5.
    // rest 6, high at 8, leaves; clear at 11.5, low at 13; the look at Z2 is at 8 + 5 = 13 too.
    expect(timeline(smallLoop({ zones: 4, start: [0], transfers: { 1: CORNER }, until: 13 }))).toEqual([
      '0 leave Z0 c0',
      '2.5 clear Z0',
      '6 rest Z1 c0',
      '6 turn Z1 out',
      '8 turned Z1 out',
      '8 leave Z1 c0',
      '11.5 clear Z1',
      '11.5 turn Z1 back',
      '13 look Z2 c0',
      '13 turned Z1 back',
      '13 leave Z2 c0 at speed',
    ])
  })

  test('high to low: lower first, lift when the zone is clear', () => {
    // rest 6, low at 7.5, leaves; clear at 11, high at 13
    const spec = smallLoop({ zones: 4, start: [0], transfers: { 1: { ...CORNER, in: 'high', out: 'low' } }, until: 13 })
    expect(timeline(spec, 'rest', 'turn', 'turned', 'leave', 'clear')).toEqual([
      '0 leave Z0 c0',
      '2.5 clear Z0',
      '6 rest Z1 c0',
      '6 turn Z1 out',
      '7.5 turned Z1 out',
      '7.5 leave Z1 c0',
      '11 clear Z1',
      '11 turn Z1 back',
      '12.5 leave Z2 c0 at speed',
      '13 turned Z1 back',
    ])
  })

  test('ways in and out of one position: no change, and a carrier may pass', () => {
    // look at Z1 at 5; e = 2 there: C(speed) = 2.5
    expect(timeline(smallLoop({ zones: 4, start: [0], transfers: { 1: { ...CORNER, in: 'high', out: 'high' } }, until: 8 }))).toEqual([
      '0 leave Z0 c0',
      '2.5 clear Z0',
      '5 look Z1 c0',
      '5 leave Z1 c0 at speed',
      '7.5 clear Z1',
    ])
  })

  test('the next carrier waits for the change back, which a given clear does not contain', () => {
    // c0: in Z1 at 4, high at 6, leaves; clear 9, low 10.5. c1: leaves Z3 when Z0 is free at 3, stands in Z0 from 7, leaves at 10.5.
    const spec = smallLoop({ zones: 4, start: [0, 3], ...GIVEN, transfers: { 1: CORNER }, until: 12.5 })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => / (leave|rest|turn|turned) /.test(line))).toEqual([
      '0 leave Z0 c0',
      '3 leave Z3 c1',
      '4 rest Z1 c0',
      '4 turn Z1 out',
      '6 turned Z1 out',
      '6 leave Z1 c0',
      '7 rest Z0 c1',
      '9 turn Z1 back',
      '10 rest Z2 c0',
      '10 leave Z2 c0',
      '10.5 turned Z1 back',
      '10.5 leave Z0 c1',
    ])
    // Z1: claimed 4 and again from 10.5; occupied but changing 2 (other); vacating 6 to 10.5
    expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 4 + 2, other: 2, vacating: 4.5 })
  })

  test('the change to the way out does not wait for the next zone; at time 0 an occupied transfer stands as its way out needs', () => {
    // c1 stands in the transfer at time 0: no lift. Clear 3, low 4.5: c0 leaves Z0, is in Z1 at 8.5, high at 10.5.
    // c1 loads in Z2 from 4 to 14; Z2 is clear at 17: only then can c0 leave, done since 10.5.
    const spec = smallLoop({ zones: 4, start: [0, 1], ...GIVEN, transfers: { 1: CORNER }, stations: [{ at: 2, load: 10 }], until: 17 })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => !line.includes('clear'))).toEqual([
      '0 leave Z1 c1',
      '3 turn Z1 back',
      '4 rest Z2 c1',
      '4 load begins S2 c1',
      '4 take p0 c1',
      '4.5 turned Z1 back',
      '4.5 leave Z0 c0',
      '8.5 rest Z1 c0',
      '8.5 turn Z1 out',
      '10.5 turned Z1 out',
      '14 load ends S2 c1',
      '14 leave Z2 c1',
      '17 leave Z1 c0',
    ])
    // Z1: vacating 4.5, claimed 4, changing 2, blocked 6.5
    expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 4, blocked: 6.5, other: 2, vacating: 4.5 })
  })

  test('at a station in a transfer the change comes after work and release', () => {
    // in Z1 at 4; load 5: 9; release 1: 10; lift 2: 12; leaves; clear 15; low 16.5
    const spec = smallLoop({
      zones: 4,
      start: [0],
      ...GIVEN,
      transfers: { 1: CORNER },
      stations: [{ at: 1, load: 5, release: 1 }],
      until: 16.5,
    })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => / (Z1|S1)/.test(line))).toEqual([
      '4 rest Z1 c0',
      '4 load begins S1 c0',
      '9 load ends S1 c0',
      '9 release begins S1 c0',
      '10 release ends S1 c0',
      '10 turn Z1 out',
      '12 turned Z1 out',
      '12 leave Z1 c0',
      '15 clear Z1',
      '15 turn Z1 back',
      '16.5 turned Z1 back',
    ])
    // station: working 6 (release is work), exchanging all else; zone: claimed 4, working 6, changing 2, vacating 4.5
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 6, exchanging: 10.5 })
    expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 4, working: 6, other: 2, vacating: 4.5 })
  })
})

describe('stops of a transfer', () => {
  test('a breakdown holds the change, which goes on with what it had left', () => {
    // Operating clock: runs in the lift only. Lift 4 to 6; fails after 1 at 5, 1 s left; repaired at 9: high at 10, clear 13, low 14.5.
    const spec = smallLoop({
      zones: 4,
      start: [0],
      ...GIVEN,
      transfers: { 1: CORNER },
      stops: [{ name: 'jam', on: { kind: 'transfer', index: 1 }, after: 1, repair: 4 }],
      until: 14.5,
    })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => /Z1|jam/.test(line))).toEqual([
      '4 rest Z1 c0',
      '4 turn Z1 out',
      '5 stop jam',
      '9 repaired jam',
      '10 turned Z1 out',
      '10 leave Z1 c0',
      '13 clear Z1',
      '13 turn Z1 back',
      '14.5 turned Z1 back',
    ])
    expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 4, other: 2, vacating: 4.5, stopped: 4 })
    expect(result.zones[1]!.stoppedBy).toEqual([{ cause: 'jam', seconds: 4 }])
  })

  test('the clock runs on in the change back', () => {
    // 2 s of lift (4 to 6), then from 9 on: fails after 3 at 10; 0.5 s of lowering left, repaired at 15: 15.5
    const spec = smallLoop({
      zones: 5,
      start: [0],
      ...GIVEN,
      transfers: { 1: CORNER },
      stops: [{ name: 'jam', on: { kind: 'transfer', index: 1 }, after: 3, repair: 5 }],
      until: 16,
    })
    expect(timeline(spec).filter((line) => /turn|jam/.test(line))).toEqual([
      '4 turn Z1 out',
      '6 turned Z1 out',
      '9 turn Z1 back',
      '10 stop jam',
      '15 repaired jam',
      '15.5 turned Z1 back',
    ])
  })

  test('a change due in a held zone does not begin, even if it takes 0 s', () => {
    // The zone is stopped at 4, when the carrier arrives: it arrives all the same; the lift begins at 7.
    const stops = [{ name: 'jam', on: { kind: 'zone', index: 1 }, clock: 'calendar', after: 4, repair: 3 } as const]
    const turning = (lift: number) =>
      timeline(
        smallLoop({ zones: 4, start: [0], ...GIVEN, transfers: { 1: { lift, lower: 1 } }, stops, until: 9 }),
        'rest',
        'turn',
        'turned',
        'leave',
      )
    expect(turning(2)).toEqual(['0 leave Z0 c0', '4 rest Z1 c0', '7 turn Z1 out', '9 turned Z1 out', '9 leave Z1 c0'])
    expect(turning(0)).toEqual(['0 leave Z0 c0', '4 rest Z1 c0', '7 turn Z1 out', '7 turned Z1 out', '7 leave Z1 c0'])
  })

  test('a change back due in a held zone does not begin either', () => {
    // lift 2: leaves at 6, clear due at 9; stopped at 9 for 3: clear at 9, lowering 12 to 13.5
    const stops = [{ name: 'jam', on: { kind: 'zone', index: 1 }, clock: 'calendar', after: 9, repair: 3 } as const]
    const spec = smallLoop({ zones: 5, start: [0], ...GIVEN, transfers: { 1: CORNER }, stops, until: 14 })
    expect(timeline(spec).filter((line) => /clear Z1|back/.test(line))).toEqual(['9 clear Z1', '12 turn Z1 back', '13.5 turned Z1 back'])
  })
})

describe('entered only if the exit is clear', () => {
  const EXIT = { ...CORNER, in: 'low', out: 'low', exitClear: true } as const

  test('the transfer is claimed together with the zone after it', () => {
    // c1 leaves Z2 at 0; Z1 is free, Z2 is not: c0 claims nothing before 3. It is in Z1 at 7, starts at once, in Z2 at 11.
    const { result, lines } = tell(smallLoop({ zones: 6, start: [0, 2], ...GIVEN, transfers: { 1: EXIT }, until: 11 }))
    expect(lines.filter((line) => / (leave|rest) /.test(line) && line.includes('c0'))).toEqual([
      '3 leave Z0 c0',
      '7 rest Z1 c0',
      '7 leave Z1 c0',
      '11 rest Z2 c0',
      '11 leave Z2 c0',
    ])
    // Z2 is set aside from 3 on, and holds nobody until 7
    expect(spent(result.zones[2]!.seconds)).toEqual({ claimed: 8, vacating: 3 })
    expect(result.zones[2]!.occupancyMean).toBe(4 / 11)
  })

  test('it lifts and lowers like any other', () => {
    // c0 alone: claims Z1 and Z2 at 0; in Z1 at 4, high at 6, leaves; clear 9, low 10.5
    const spec = smallLoop({ zones: 5, start: [0], ...GIVEN, transfers: { 1: { ...CORNER, exitClear: true } }, until: 11 })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => line.includes('Z1'))).toEqual([
      '4 rest Z1 c0',
      '4 turn Z1 out',
      '6 turned Z1 out',
      '6 leave Z1 c0',
      '9 clear Z1',
      '9 turn Z1 back',
      '10.5 turned Z1 back',
    ])
    // Z2: claimed 0 to 10, when its carrier arrives and goes on, vacating to 11
    expect(spent(result.zones[2]!.seconds)).toEqual({ claimed: 10, vacating: 1 })
  })

  test('a carrier may pass it at speed', () => {
    // claims Z1 and Z2 at 0; looks at Z1 at 5: Z2 is set aside for it. C(speed) out of the transfer 2.5. Looks at Z2 at 9.
    expect(timeline(smallLoop({ zones: 6, start: [0], transfers: { 1: EXIT }, until: 9 }))).toEqual([
      '0 leave Z0 c0',
      '2.5 clear Z0',
      '5 look Z1 c0',
      '5 leave Z1 c0 at speed',
      '7.5 clear Z1',
      '9 look Z2 c0',
      '9 leave Z2 c0 at speed',
    ])
  })

  test('two in a row are claimed together, with the zone after them', () => {
    // c1 leaves Z3 at 0, clear at 3: c0 claims Z1, Z2, Z3. It goes on at 7, 11, 15, 19. c1 waits in Z5 for Z6, which c2 leaves at 6: clear at 9.
    // c2 stands in Z0 from 10 on: Z1 is free at 10, Z2 at 14, Z3 only at 18.
    const spec = smallLoop({ zones: 7, start: [0, 3, 6], ...GIVEN, transfers: { 1: EXIT, 2: EXIT }, until: 18 })
    expect(timeline(spec, 'leave')).toEqual([
      '0 leave Z3 c1',
      '3 leave Z0 c0',
      '4 leave Z4 c1',
      '6 leave Z6 c2',
      '7 leave Z1 c0',
      '9 leave Z5 c1',
      '11 leave Z2 c0',
      '15 leave Z3 c0',
      '18 leave Z0 c2',
    ])
  })

  test('a stop that holds the exit does not prevent the claim', () => {
    // c0 reaches Z0 at 4, while Z2 is stopped from 2 to 22: it enters the transfer all the same, and waits there from 8 on.
    const stop = (zone: number) => [{ name: 'jam', on: { kind: 'zone', index: zone }, clock: 'calendar', after: 2, repair: 20 } as const]
    const leaving = (zone: number) =>
      timeline(smallLoop({ zones: 5, start: [4], ...GIVEN, transfers: { 1: EXIT }, stops: stop(zone), until: 26 }), 'leave', 'rest')
    expect(leaving(2)).toEqual([
      '0 leave Z4 c0',
      '4 rest Z0 c0',
      '4 leave Z0 c0',
      '8 rest Z1 c0',
      '22 leave Z1 c0',
      '26 rest Z2 c0',
      '26 leave Z2 c0',
    ])
    // a stop of the transfer itself does
    expect(leaving(1)).toEqual(['0 leave Z4 c0', '4 rest Z0 c0', '22 leave Z0 c0', '26 rest Z1 c0', '26 leave Z1 c0'])
  })

  test('the stopped exit keeps its claim: it counts as stopped, and is free again after its carrier', () => {
    const stops = [{ name: 'jam', on: { kind: 'zone', index: 2 }, clock: 'calendar', after: 2, repair: 20 } as const]
    const { result } = tell(smallLoop({ zones: 5, start: [4], ...GIVEN, transfers: { 1: EXIT }, stops, until: 30 }))
    // Z2: free to 2, stopped to 22, claimed to 26 (c0 leaves Z1 at 22), vacating to 29, free to 30
    expect(spent(result.zones[2]!.seconds)).toEqual({ free: 2 + 1, claimed: 4, vacating: 3, stopped: 20 })
  })
})
