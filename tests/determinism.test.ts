/** One seed, one world: MODEL.md §9. */
import { createSimulator, type LineSpec, simulate, Trace } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { smallLoop, type StationWish, tell, type Wish } from './helpers/smallLoop.ts'

const lognormal = (mean: number, cv: number) => ({ kind: 'lognormal', mean, cv }) as const
const exponential = (mean: number) => ({ kind: 'exponential', mean }) as const

const STATIONS: readonly StationWish[] = [
  { at: 0, name: 'Load', load: { 'set base': [lognormal(20, 0.2), lognormal(26, 0.2)] }, release: exponential(1) },
  { at: 4, name: 'Weld', work: { weld: [lognormal(22, 0.3), 18] } },
  { at: 8, name: 'Test', work: { test: { kind: 'gamma', mean: 24, cv: 0.4 } } },
  { at: 11, name: 'Unload', unload: { 'take off': exponential(15) } },
]

const LINE: Wish = {
  zones: 14,
  start: 7,
  variants: 2,
  mix: { kind: 'random', shares: [0.6, 0.4] },
  stations: STATIONS,
  transfers: { 6: { lift: 1, lower: 1, exitClear: true } },
  stops: [
    { name: 'welder', on: { kind: 'station', index: 1 }, after: exponential(200), repair: lognormal(30, 0.6) },
    { name: 'belt', on: { kind: 'transfer', index: 6 }, after: exponential(60), repair: exponential(20) },
    { name: 'power', on: { kind: 'section', index: 0 }, clock: 'calendar', after: exponential(900), repair: exponential(40) },
  ],
  breaks: [[1200, 300]],
  warmup: 300,
  until: 3600,
}

function hashOf(spec: LineSpec, seed: string, replication: number, backwards = false): string {
  const trace = new Trace()
  simulate(spec, { seed, replication, trace, backwards })
  return trace.hash.digest()
}

describe('the same again', () => {
  const spec = smallLoop(LINE)

  test('one seed twice gives one trace; another seed or replication another', () => {
    expect(hashOf(spec, 'a', 0)).toBe(hashOf(spec, 'a', 0))
    expect(new Set([hashOf(spec, 'a', 0), hashOf(spec, 'a', 1), hashOf(spec, 'b', 0)]).size).toBe(3)
  })

  test('a simulator used before gives the same as a fresh one', () => {
    const trace = new Trace()
    const simulator = createSimulator(spec, { trace })
    for (const replication of [5, 0, 3]) simulator.run({ seed: 'a', replication })
    const result = simulator.run({ seed: 'a', replication: 0 })
    expect(result).toEqual(simulate(spec, { seed: 'a', replication: 0 }))
    expect(trace.hash.digest()).toBe(hashOf(spec, 'a', 0))
  })

  test('the order in which simultaneous events are stored shows nowhere', () => {
    // whole seconds throughout, so that many events fall together
    const ties = smallLoop({
      ...LINE,
      move: { kind: 'discrete', values: [1, 2, 3], weights: [1, 1, 1] },
      clear: { kind: 'discrete', values: [1, 2], weights: [1, 1] },
      stations: STATIONS.map(({ at }, k) => ({
        at,
        ...(k === 0 ? { load: 2 } : k === 3 ? { unload: 2 } : { work: { kind: 'discrete' as const, values: [2, 4], weights: [1, 1] } }),
      })),
    })
    for (const line of [spec, ties]) {
      for (let replication = 0; replication < 5; replication++) {
        expect(hashOf(line, 'a', replication, true)).toBe(hashOf(line, 'a', replication))
        expect(simulate(line, { seed: 'a', replication, backwards: true })).toEqual(simulate(line, { seed: 'a', replication }))
      }
    }
  })

  test('what is not in the specification of the world does not enter: a longer window continues the shorter one', () => {
    const lines = (until: number) => tell(smallLoop({ ...LINE, until }), 'a').lines
    const short = lines(1000)
    expect(lines(1500).slice(0, short.length)).toEqual(short)
  })
})

describe('the world belongs to the products', () => {
  /** Seconds of a duty by serial, by the name of the station. */
  function seconds(wish: Wish): Map<string, Map<number, number>> {
    const { lines } = tell(smallLoop({ ...wish, stops: [], breaks: [] }), 'a')
    const serial = new Map<string, string>()
    const begun = new Map<string, number>()
    const found = new Map<string, Map<number, number>>()
    for (const line of lines) {
      const [at, word, second, third, fourth] = line.split(' ') as [string, string, string, string, string]
      if (word === 'take') serial.set(third, second.slice(1))
      if (word !== 'load' && word !== 'work' && word !== 'unload') continue
      if (second === 'begins') begun.set(fourth, Number(at))
      else {
        const byStation = found.get(third) ?? new Map<number, number>()
        byStation.set(Number(serial.get(fourth)), Number(at) - begun.get(fourth)!)
        found.set(third, byStation)
      }
    }
    return found
  }
  /** Products that both have had at the station, and whether all times agree. */
  function agree(a: Map<number, number>, b: Map<number, number>): number {
    const both = [...a.keys()].filter((serial) => b.has(serial))
    expect(both.map((serial) => a.get(serial))).toEqual(both.map((serial) => b.get(serial)))
    return both.length
  }

  const base = seconds(LINE)

  test.each([3, 5, 9, 12])('%d carriers meet the same task times, product by product', (count) => {
    const other = seconds({ ...LINE, start: count })
    for (const name of ['Load', 'Weld', 'Test', 'Unload']) expect(agree(base.get(name)!, other.get(name)!)).toBeGreaterThan(40)
  })

  test('a station added elsewhere changes no draw of the others', () => {
    const added: StationWish = { at: 2, name: 'Glue', work: { glue: lognormal(10, 0.5) }, release: exponential(2) }
    for (const stations of [
      [...STATIONS, added],
      [added, ...STATIONS],
    ]) {
      const other = seconds({ ...LINE, stations })
      expect(other.get('Glue')!.size).toBeGreaterThan(40)
      for (const name of ['Load', 'Weld', 'Test', 'Unload']) expect(agree(base.get(name)!, other.get(name)!)).toBeGreaterThan(40)
    }
  })

  test('neither does moving a station, or naming it anew; a task of another name has other draws', () => {
    const moved = seconds({ ...LINE, stations: STATIONS.map((station) => (station.name === 'Weld' ? { ...station, at: 2 } : station)) })
    for (const name of ['Load', 'Weld', 'Test', 'Unload']) expect(agree(base.get(name)!, moved.get(name)!)).toBeGreaterThan(40)
    const named = seconds({
      ...LINE,
      stations: STATIONS.map((station) => (station.name === 'Test' ? { ...station, name: 'Check' } : station)),
    })
    expect(agree(base.get('Test')!, named.get('Check')!)).toBeGreaterThan(40)
    const renamed = seconds({
      ...LINE,
      stations: STATIONS.map((s) => (s.name === 'Test' ? { ...s, work: { check: { kind: 'gamma', mean: 24, cv: 0.4 } as const } } : s)),
    })
    expect(renamed.get('Test')!.get(0)).not.toBe(base.get('Test')!.get(0))
  })

  test('breakdowns and releases keep their draws when a station is added', () => {
    const lengths = (wish: Wish, source: string): number[] => {
      const { lines } = tell(smallLoop(wish), 'a')
      const at = (word: string) => lines.filter((line) => line.endsWith(` ${word} ${source}`)).map((line) => Number(line.split(' ')[0]))
      return at('repaired').map((end, k) => end - at('stop')[k]!)
    }
    const added: StationWish = { at: 2, name: 'Glue', work: { glue: lognormal(10, 0.5) } }
    for (const source of ['welder', 'belt', 'power']) {
      const before = lengths(LINE, source)
      const after = lengths({ ...LINE, stations: [...STATIONS, added] }, source)
      const both = Math.min(before.length, after.length)
      expect(both).toBeGreaterThan(1)
      expect(after.slice(0, both)).toEqual(before.slice(0, both))
    }
  })
})
