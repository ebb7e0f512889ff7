import { AssertionError } from '@loopwright/kernel'
import { describe, expect, test } from 'vitest'
import { smallLoop } from '../../../tests/helpers/smallLoop.ts'
import { createSimulator, simulate } from './simulate.ts'
import { Trace } from './telling/trace.ts'
import { total } from '../../../tests/helpers/spent.ts'

const RANDOM = smallLoop({
  zones: 6,
  start: 3,
  move: { kind: 'exponential', mean: 2 },
  clear: 'move',
  stations: [
    { at: 0, unload: true, load: { kind: 'lognormal', mean: 5, cv: 0.3 } },
    { at: 3, work: { kind: 'gamma', mean: 5, cv: 0.5 } },
  ],
  warmup: 100,
  until: 1000,
})

describe('the window', () => {
  // Two zones, one carrier. move 5, clear 5, unload (no task) and load 10 in Z0: in Z0 at 5; loads 5–15, 25–35, 45–55 …; outputs at 25, 45, 65 …
  const spec = smallLoop({ zones: 2, start: [1], move: 5, clear: 5, stations: [{ at: 0, unload: true, load: 10 }] })
  const counted = (warmupSeconds: number, endSeconds: number) =>
    simulate({ ...spec, window: { warmupSeconds, endSeconds } }, { seed: 'a', replication: 0 })

  test('what happens at exactly the warm-up lies before it, at exactly the end inside', () => {
    expect(counted(25, 65).outputSeconds).toEqual([45, 65])
    expect(counted(24.5, 64.5).outputSeconds).toEqual([25, 45])
    expect(counted(25, 65).loads).toBe(2)
    expect(counted(0, 5)).toMatchObject({ loads: 1, output: 0 })
  })

  test('hours are counted from the end of the warm-up, an output at a full hour belongs to the hour that ends', () => {
    // (25, 5425]: 45 … 3625 = 25 + 3600 are 180; 3645 … 5425 are 90, the last at exactly the end
    const result = counted(25, 25 + 3600 + 1800)
    expect(result.outputByHour).toEqual([180, 90])
    expect([result.output, result.outputSeconds[0], result.outputSeconds.at(-1)]).toEqual([270, 45, 5425])
    expect(result.outputPerHour).toBe(180)
    expect(counted(24, 24 + 3600).outputByHour).toEqual([180])
    expect(counted(25, 26).outputByHour).toEqual([0])
  })

  test('laps and times in line that end in the window count whole', () => {
    // starts out of Z0 at 15, 35, 55; product k is loaded at 5 + 20k and taken off at 25 + 20k
    const result = counted(34, 60)
    expect(result.lap).toEqual({ count: 2, mean: 20, sd: 0, min: 20, max: 20 })
    expect(result.timeInLine).toEqual({ count: 1, mean: 20, sd: null, min: 20, max: 20 })
    expect(result.productsInLineMean).toBe(1)
    expect(counted(0, 24).timeInLine).toEqual({ count: 0, mean: null, sd: null, min: null, max: null })
    // nothing in line from 0 to 5
    expect(counted(0, 20).productsInLineMean).toBe(15 / 20)
  })

  test('the warm-up forgets what was counted and keeps the state', () => {
    const whole = counted(0, 100)
    const later = counted(40, 100)
    const before = counted(0, 40)
    const sum = <S extends string>(a: Readonly<Record<S, number>>, b: Readonly<Record<S, number>>) =>
      Object.fromEntries(Object.keys(a).map((state) => [state, a[state as S] + b[state as S]]))
    expect(sum(before.stations[0]!.seconds, later.stations[0]!.seconds)).toEqual(whole.stations[0]!.seconds)
    for (const [z, zone] of whole.zones.entries()) expect(sum(before.zones[z]!.seconds, later.zones[z]!.seconds)).toEqual(zone.seconds)
    expect(sum(before.carriers[0]!.seconds, later.carriers[0]!.seconds)).toEqual(whole.carriers[0]!.seconds)
    expect(before.output + later.output).toBe(whole.output)
    expect(before.stations[0]!.cycles + later.stations[0]!.cycles).toBe(whole.stations[0]!.cycles)
  })

  test('a warm-up that the line does not live to see leaves an empty window', () => {
    const gridlocked = smallLoop({
      zones: 3,
      start: 2,
      transfers: { 1: { lift: 1, lower: 1, exitClear: true } },
      move: 1,
      clear: 1,
      warmup: 50,
      until: 80,
    })
    const result = simulate(gridlocked, { seed: 'a', replication: 0 })
    expect(result.end).toMatchObject({ reason: 'gridlock', atSeconds: 0 })
    expect(total(result.zones[0]!.seconds)).toBe(30)
  })
})

describe('options', () => {
  test('seed and replication are told and decide', () => {
    const run = (seed: string, replication: number) => simulate(RANDOM, { seed, replication })
    expect(run('a', 0)).toEqual(run('a', 0))
    expect([run('a', 1).seed, run('a', 1).replication]).toEqual(['a', 1])
    expect(run('a', 0).outputSeconds).not.toEqual(run('a', 1).outputSeconds)
    expect(run('a', 0).outputSeconds).not.toEqual(run('b', 0).outputSeconds)
  })

  test('a seed that would mix with the names of streams is refused', () => {
    expect(() => simulate(RANDOM, { seed: '', replication: 0 })).toThrow()
    expect(() => simulate(RANDOM, { seed: 'a/b', replication: 0 })).toThrow()
    expect(() => simulate(RANDOM, { seed: 'a', replication: -1 })).toThrow()
  })

  test('trace, verify and backwards leave the result alone', () => {
    const plain = simulate(RANDOM, { seed: 'a', replication: 0 })
    const trace = new Trace()
    expect(simulate(RANDOM, { seed: 'a', replication: 0, trace })).toEqual(plain)
    expect(simulate(RANDOM, { seed: 'a', replication: 0, verify: true })).toEqual(plain)
    expect(simulate(RANDOM, { seed: 'a', replication: 0, backwards: true })).toEqual(plain)
    expect(trace.length).toBeGreaterThan(1000)
  })

  test('verify finds a broken line', () => {
    // a zone named as in a start list that does not exist leaves its carrier nowhere
    const sound = smallLoop({ zones: 4, start: [0] })
    const spec = { ...sound, carriers: { ...sound.carriers, start: [9] } }
    expect(() => simulate(spec, { seed: 'a', replication: 0, verify: true })).toThrow(AssertionError)
  })
})

test('a simulator runs one replication after the other, each as if alone', () => {
  const simulator = createSimulator(RANDOM, { verify: true })
  const runs = [3, 0, 3].map((replication) => simulator.run({ seed: 'a', replication }))
  expect(runs[0]).toEqual(runs[2])
  expect(runs[1]).toEqual(simulate(RANDOM, { seed: 'a', replication: 0 }))
})

test('events count what was handled', () => {
  // alone: two a move, and one at each work: starts at 0, 4, 8 …, by 10: arrivals 4, 8; clears 1, 5, 9; work of 0 s none
  expect(simulate(smallLoop({ zones: 4, start: [0], move: 4, clear: 1, until: 10 }), { seed: 'a', replication: 0 }).events).toBe(5)
})

test('an engine that is not there is told with those that are', () => {
  const wrong = { seed: 'a', engine: 'quick' as 'auto' }
  expect(() => simulate(RANDOM, wrong)).toThrow('there is no engine "quick": it is one of auto, events, recursion')
})
