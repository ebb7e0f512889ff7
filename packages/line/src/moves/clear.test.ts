/** Clears that need no timer: a run without a trace takes that way, and must tell the same as one with a trace. */
import { describe, expect, test } from 'vitest'
import { smallLoop, tell, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { makeAllClear, nextZoneTakes, timeClear } from './clear.ts'
import { handleInstant } from '../instant/instant.ts'
import { simulate } from '../simulate.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'
import { CLEAR_KNOWN, CLEAR_NOW, CLEAR_TIMED, FREE, VACATING } from '../state/moves.ts'
import { Trace } from '../telling/trace.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

/** A lone carrier that has just left Z0 at 0; move 4, clear 3. */
function justLeft(start: number[] = [0]): Line {
  const line = buildLine(smallLoop({ zones: 5, start, move: 4, clear: 3 }))
  resetLine(line, 'a', 0)
  handleInstant(line)
  return line
}

describe('a clear that nobody waits for', () => {
  test('has no timer; the zone is free for whoever asks from that instant on', () => {
    const line = justLeft()
    expect([line.moves.zoneClearing[0], line.queue.times[line.slots.clearSlot], line.queue.isPending(line.slots.clearSlot)]).toEqual([
      CLEAR_KNOWN,
      3,
      false,
    ])
    line.now = 2.5
    expect([nextZoneTakes(line, 4, 0), line.moves.zoneState[0]]).toEqual([false, VACATING])
    line.now = 3
    expect([nextZoneTakes(line, 4, 0), line.moves.zoneState[0], line.moves.zoneClearing[0]]).toEqual([true, FREE, CLEAR_NOW])
  })

  test('gets its timer when somebody begins to wait', () => {
    const line = justLeft()
    expect([timeClear(line, 0), line.moves.zoneClearing[0], line.queue.times[line.slots.clearSlot]]).toEqual([true, CLEAR_TIMED, 3])
    expect(timeClear(line, 0)).toBe(false)
    // c0 waits in Z0 for Z1, which c1 leaves at 0
    const queued = justLeft([0, 1])
    expect([queued.moves.zoneClearing[1], queued.queue.isPending(queued.slots.clearSlot + 1)]).toEqual([CLEAR_TIMED, true])
  })

  test('gets it also behind an exit-clear transfer that is free', () => {
    // c1 leaves Z2 at 0, clear at 10, and loads in Z4 from 2 to 102. c0 stands in Z0 from 2 on: Z1 is free, Z2 is not before 10.
    const spec = smallLoop({
      zones: 7,
      start: [5, 2],
      move: 1,
      clear: [1, 1, 10, 1, 1, 1, 1],
      transfers: { 1: { lift: 0, lower: 0, out: 'low', exitClear: true } },
      stations: [{ at: 4, load: 100 }],
      until: 20,
    })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => line.includes('leave') && line.includes('c0'))).toEqual([
      '0 leave Z5 c0',
      '1 leave Z6 c0',
      '10 leave Z0 c0',
      '11 leave Z1 c0',
      '12 leave Z2 c0',
    ])
    // Z0: free 0–1, claimed 1–2, blocked 2–10, vacating 10–11, free 11–20
    expect(spent(result.zones[0]!.seconds)).toEqual({ free: 1 + 9, claimed: 1, blocked: 8, vacating: 1 })
  })

  test('is made good at the end of what is told', () => {
    const line = justLeft()
    line.now = 2
    makeAllClear(line)
    expect(line.moves.zoneClearing[0]).toBe(CLEAR_KNOWN)
    line.now = 3
    makeAllClear(line)
    expect([line.moves.zoneClearing[0], line.moves.zoneState[0], line.moves.zoneState[1]]).toEqual([CLEAR_NOW, FREE, 1])
  })

  test('is counted to the instant in which the zone turned free', () => {
    // a station in Z0 that the empty carrier leaves: exchanging to 3, then starved; the carrier comes back at 16. Told at 10 and from 10 on.
    const spec = (warmup: number, until: number) =>
      smallLoop({ zones: 5, start: [0], move: 4, clear: 3, stations: [{ at: 0, work: 1 }], warmup, until })
    const told = (warmup: number, until: number) => simulate(spec(warmup, until), { seed: 'a', replication: 0, verify: true })
    expect(told(0, 10).stations[0]!.seconds).toMatchObject({ exchanging: 3, starved: 7 })
    expect(told(2, 10).stations[0]!.seconds).toMatchObject({ exchanging: 1, starved: 7 })
    expect(spent(told(3, 10).zones[0]!.seconds)).toEqual({ free: 7 })
    expect(spent(told(0, 2).zones[0]!.seconds)).toEqual({ vacating: 2 })
    expect(told(5, 10).stations[0]!.seconds).toMatchObject({ exchanging: 0, starved: 5 })
  })
})

describe('with and without a trace', () => {
  const exponential = (mean: number) => ({ kind: 'exponential', mean }) as const
  const EXIT = { lift: 0, lower: 0, out: 'low', exitClear: true } as const
  const LINES: Record<string, Wish> = {
    'queues and holes': {
      zones: 9,
      start: 6,
      move: exponential(2),
      clear: exponential(3),
      stations: [{ at: 0, unload: true, load: exponential(4) }],
    },
    'clears of 0 s': { zones: 7, start: 4, clear: 0, stations: [{ at: 0, unload: true, load: 3 }] },
    'exit-clear transfers': {
      zones: 10,
      start: 6,
      move: exponential(2),
      clear: exponential(5),
      transfers: { 3: EXIT, 4: EXIT, 8: EXIT },
      stations: [{ at: 0, unload: true, load: exponential(4) }],
    },
    'stops of one zone and of a station': {
      zones: 10,
      start: 7,
      stations: [
        { at: 0, unload: true, load: 5 },
        { at: 5, work: 6 },
      ],
      stops: [
        { name: 'jam', on: { kind: 'zone', index: 3 }, clock: 'calendar', after: exponential(50), repair: exponential(10) },
        { name: 'wear', on: { kind: 'station', index: 1 }, after: exponential(30), repair: exponential(10) },
      ],
    },
    'breaks with the conveyor on': {
      zones: 8,
      start: 3,
      stations: [
        { at: 0, unload: true, load: 5 },
        { at: 4, work: 6 },
      ],
      breaks: [
        [100, 30],
        [200, 7],
      ],
    },
    gridlock: { zones: 6, start: [0, 1, 3, 4, 5], move: 3, clear: 20, transfers: { 1: EXIT } },
  }
  test.each(Object.entries(LINES))('%s: one result', (_, wish) => {
    for (let replication = 0; replication < 5; replication++) {
      const spec = smallLoop({ warmup: 33, until: 1000, ...wish })
      const untraced = simulate(spec, { seed: 'a', replication, verify: true })
      expect(untraced).toEqual(simulate(spec, { seed: 'a', replication, trace: new Trace() }))
      expect(untraced).toEqual(simulate(spec, { seed: 'a', replication }))
    }
  })
})
