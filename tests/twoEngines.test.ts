/**
 * The event engine and the recursion are one model: every number of a result must be equal, on every line that both can run.
 * Half of the lines are made up at random; the others are those with every stop turned into one that only lengthens a stay, so that most of them fall to the recursion.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { type LineSpec, simulate, type TaskSpec } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { randomLine } from './oracle/readAloud/randomLine.ts'

/** Stops of stations and transfers only, on operating time; the conveyor runs in breaks; products never run out. */
function withLocalStops(line: LineSpec): LineSpec {
  return {
    ...line,
    breakdowns: line.breakdowns.flatMap((source) =>
      source.part.kind === 'station' || source.part.kind === 'transfer' ? [{ ...source, clock: 'operating' as const }] : [],
    ),
    conveyorDuringBreaks: true,
    mix: line.mix.kind === 'list' ? { ...line.mix, kind: 'pattern' } : line.mix,
  }
}

/** No stops, no breaks, no release, and each task takes one time for all variants: stations follow their zones, and times are known ahead. */
function withoutStops(line: LineSpec): LineSpec {
  const common = new Map<number, TaskSpec['seconds'][number]>()
  for (const { unload, load, work } of line.stations) {
    for (const { task, seconds } of [unload, load, work].flatMap((tasks) => tasks ?? [])) {
      if (!common.has(task)) common.set(task, seconds.find((time) => time !== null && time.kind !== 'constant') ?? null)
    }
  }
  const alike = (tasks: readonly TaskSpec[] | null) =>
    tasks?.map(({ task, seconds }) => ({ task, seconds: seconds.map((time) => common.get(task) ?? time) })) ?? null
  return {
    ...withLocalStops(line),
    breakdowns: [],
    breaks: [],
    stations: line.stations.map((station) => ({
      ...station,
      load: alike(station.load),
      work: alike(station.work),
      unload: alike(station.unload),
      releaseSeconds: { kind: 'constant', value: 0 },
    })),
  }
}

/** A station whose stay is one task, drawn. */
const hasShortStay = (line: LineSpec): boolean =>
  line.stations.some(({ unload, load, work }) => {
    const tasks = [unload, load, work].flatMap((given) => given ?? [])
    const duties = [unload, load, work].filter((given) => given !== null)
    return duties.length === 1 && tasks.length === 1 && tasks[0]!.seconds.every((time) => time !== null && time.kind !== 'constant')
  })

/** True: both engines ran it, and agree. */
function bothAgree(line: LineSpec, seed: string): boolean {
  const run = { seed, replication: 0 }
  let recursion: ReturnType<typeof simulate>
  try {
    recursion = simulate(line, { ...run, engine: 'recursion' })
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError)
    return false
  }
  expect(recursion).toEqual(simulate(line, { ...run, engine: 'events' }))
  expect(recursion).toEqual(simulate(line, run))
  return true
}

test('random lines: at least a fifth of them fall to the recursion, and no number differs', () => {
  let ran = 0
  let short = 0
  fc.assert(
    fc.property(randomLine(), (line) => {
      for (const one of [line, withLocalStops(line)]) if (bothAgree(one, '5')) ran++
      const calm = withoutStops(line)
      if (bothAgree(calm, '5') && hasShortStay(calm)) short++
    }),
    { seed: 22, numRuns: 300 },
  )
  expect(ran).toBeGreaterThanOrEqual(120)
  expect(short).toBeGreaterThanOrEqual(60)
})

const FOLDER = new URL('../scenarios/', import.meta.url)
test.each(readdirSync(FOLDER).filter((file) => file.endsWith('.yaml')))('%s gives the same by both, where both can', (file) => {
  const { scenario } = readScenario(readFileSync(new URL(file, FOLDER), 'utf8'))
  const stopsAll = scenario!.line.breakdowns.some((source) => source.part.kind === 'section' || source.part.kind === 'zone')
  for (const seed of ['1', '2', '3']) expect(bothAgree(scenario!.line, seed)).toBe(!stopsAll)
})

test('what cannot recur is said: a line breakdown, a trace', () => {
  const { scenario } = readScenario(readFileSync(new URL('outdoor-unit-base-line.yaml', FOLDER), 'utf8'))
  const held: LineSpec = {
    ...scenario!.line,
    breakdowns: [
      {
        name: 'power',
        part: { kind: 'section', index: 0 },
        clock: 'calendar',
        timeToFailureSeconds: { kind: 'constant', value: 9 },
        repairSeconds: { kind: 'constant', value: 1 },
      },
    ],
  }
  expect(() => simulate(held, { seed: '1', replication: 0, engine: 'recursion' })).toThrow('the recursion does not hold for this line')
  expect(() => simulate(scenario!.line, { seed: '1', replication: 0, engine: 'recursion', verify: true })).toThrow(
    'the recursion does not hold for this line',
  )
})
