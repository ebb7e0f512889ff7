/** Held against the events of the run, looked up one by one, and against the engine's own sums. */
import { readFileSync } from 'node:fs'
import { STATION_STATES, STORE, startZones, TRACE_KINDS } from '@loopwright/line'
import { readScenarioWith } from '@loopwright/scenario'
import { type TracedRun, traceRun } from '@loopwright/study'
import { describe, expect, test } from 'vitest'
import { EXACT_LINE, OPEN_LINE, RING, SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { carrierAt, countAt, holdsAt, operatorAt } from './replayAt.ts'
import { replayOf } from './replayOf.ts'

const file = (name: string): string => readFileSync(new URL(`../../../../scenarios/${name}.yaml`, import.meta.url), 'utf8')
const TEXTS: Readonly<Record<string, string>> = {
  demo: file('outdoor-unit-base-line'),
  'open line': file('test-and-repair-line'),
  learning: file('ten-zone-learning-loop'),
  'without corners': file('loop-without-corners'),
  small: SMALL_LINE,
  exact: EXACT_LINE,
  ring: RING,
  open: OPEN_LINE,
}

const runs = new Map<string, ReturnType<typeof replayedAnew>>()

/** Run once for all tests that look at it. */
function replayed(text: string, changes: Parameters<typeof readScenarioWith>[1] = {}): ReturnType<typeof replayedAnew> {
  const key = JSON.stringify([text, changes])
  const known = runs.get(key) ?? replayedAnew(text, changes)
  runs.set(key, known)
  return known
}

async function replayedAnew(text: string, changes: Parameters<typeof readScenarioWith>[1]) {
  const { scenario } = readScenarioWith(text, changes)
  const { run, trace } = (await traceRun(scenario!.line, { replication: 0 }, { seed: 'r', workers: 0 })) as TracedRun
  return { scenario: scenario!, run, trace, replay: replayOf(scenario!, trace, run.end) }
}

describe.each(Object.entries(TEXTS))('%s', (_, text) => {
  test('at ten instants each carrier is where the events say', { tags: 'long' }, async () => {
    const { scenario, trace, replay } = await replayed(text)
    const { line } = scenario
    for (let tenth = 0; tenth < 10; tenth += 1) {
      const now = trace.seconds[Math.floor(((tenth + 0.5) / 10) * trace.kinds.length)]! + 0.001
      for (const [carrier, track] of replay.carriers.entries()) {
        // the last move and the last rest of this carrier, by going through all events
        let [zone, moving, started, path] = [startZones(line)[carrier]!, false, 0, -1]
        let arrives = Number.POSITIVE_INFINITY
        for (let k = 0; k < trace.kinds.length; k += 1) {
          if (trace.carriers[k] !== carrier) continue
          const kind = TRACE_KINDS[trace.kinds[k]!]
          if (trace.seconds[k]! <= now) {
            if (kind === 'move start')
              [zone, moving, started, path] = [line.paths[trace.places[k]!]!.to, true, trace.seconds[k]!, trace.places[k]!]
            else if (kind === 'rest') [zone, moving] = [trace.places[k]!, false]
          } else if (kind === 'move start' || kind === 'rest') {
            arrives = trace.seconds[k]!
            break
          }
        }
        const at = carrierAt(track, now)
        expect(at.to, `carrier ${carrier} at ${now}`).toBe(zone)
        expect(at.path >= 0, `carrier ${carrier} at ${now} moves`).toBe(moving)
        if (!moving) continue
        expect(at.path).toBe(path)
        const held = replay.holds.some(({ from, to, zones }) => to > started && from < arrives && (zones === null || zones.length > 0))
        if (!held && Number.isFinite(arrives)) expect(at.way).toBeCloseTo((now - started) / (arrives - started), 9)
      }
    }
  })

  test('each station is in a state for as long as the result of the run says', async () => {
    const { run, replay, scenario } = await replayed(text)
    const { warmupSeconds } = scenario.line.window
    for (const [index, station] of run.stations.entries()) {
      for (const state of STATION_STATES) {
        const sum = replay.stations[index]!.filter((stretch) => stretch.state === state).reduce(
          (total, { from, to }) => total + Math.max(0, to - Math.max(from, warmupSeconds)),
          0,
        )
        expect(sum, `${station.name} ${state}`).toBeCloseTo(station.seconds[state], 3)
      }
    }
  })

  test('units, and who carries a product', async () => {
    const { run, replay, scenario } = await replayed(text)
    const { warmupSeconds, endSeconds } = scenario.line.window
    expect(countAt(replay.made, endSeconds) - countAt(replay.made, warmupSeconds)).toBe(run.output)
    const loaded = replay.carriers.filter((track) => carrierAt(track, endSeconds).loaded).length
    expect(loaded).toBeLessThanOrEqual(replay.carriers.length)
  })
})

test('a carrier in the midst of a move stands still while its zone is held', async () => {
  const { replay } = await replayed(RING, { 'stops.belt': { at: 'line', after: 'exponential 5 min', lasts: '2 min', clock: 'calendar' } })
  const frozen = replay.carriers.flatMap(({ legs }) => legs).filter((leg) => leg.frozen.length === 1 && !leg.open)
  expect(frozen.length).toBeGreaterThan(5)
  for (const leg of frozen) {
    const track = { startZone: 0, legs: [leg], loadChanges: [] }
    const [from, to] = leg.frozen[0]!
    expect(carrierAt(track, from).way).toBeCloseTo(carrierAt(track, to).way, 12)
    expect(holdsAt(replay, (from + to) / 2).map(({ name }) => name)).toContain('belt')
    // even in time otherwise
    const gone = leg.arrive - leg.start - (to - from)
    expect(carrierAt(track, from).way).toBeCloseTo((from - leg.start) / gone, 9)
  }
})

test('a standstill is the first thing offered, and the run ends there', async () => {
  const { replay, run } = await replayed(TEXTS['open line']!, { 'carriers.count': '5' })
  expect(run.end.reason).toBe('gridlock')
  expect(replay.marks[0]).toEqual({ label: 'Gridlock', seconds: run.end.atSeconds })
  expect(replay.endSeconds).toBe(run.end.atSeconds)
})

test('the demo offers the first time that each station is blocked, the longest stop, the break', async () => {
  const { replay } = await replayed(TEXTS.demo!)
  const labels = replay.marks.map(({ label }) => label)
  expect(labels).toContain('First time S5 Fan deck and casing is blocked')
  expect(labels.some((label) => label.startsWith('Longest stop: '))).toBe(true)
  expect(labels).toContain('First break')
  for (const { seconds } of replay.marks) expect(seconds).toBeLessThanOrEqual(replay.endSeconds)
})

test('operators are where the events send them', async () => {
  const { replay, trace, scenario } = await replayed(TEXTS['open line']!)
  expect(replay.operators.map(({ name }) => name)).toEqual(['left', 'right'])
  let seen = 0
  for (let k = 0; k < trace.kinds.length; k += 1) {
    if (TRACE_KINDS[trace.kinds[k]!] !== 'operator there') continue
    const at = operatorAt(replay, trace.details[k]!, trace.seconds[k]!)
    expect(at!.now).toMatchObject({ station: trace.places[k] })
    seen += 1
  }
  expect(seen).toBeGreaterThan(10)
  expect(replay.carriers.some((track) => carrierAt(track, 0).to === STORE)).toBe(scenario.line.carriers.start === 'store')
})
