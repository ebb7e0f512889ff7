import type { LineSpec } from '@loopwright/line'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { anyLine, anyName, between, time } from '../../../../tests/helpers/anyLine.ts'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { formatProblems } from '../problems/formatProblems.ts'
import { readScenario } from '../read.ts'
import type { Scenario } from '../scenario.ts'
import { writeLine, writeScenario } from './write.ts'

/** Signs of what a complete form can say; each stands in at least one of ten lines. */
const FEATURES = [
  ...[
    'exponential',
    ' ± ',
    'gamma',
    'pert',
    '..',
    'kind: weibull',
    'kind: empirical',
    'kind: discrete',
    'kind: replay',
    'kind: occasional',
    'kind: limited',
  ],
  ...[
    'enterOnlyIfExitClear: true',
    'fromPosition: high',
    'across: true',
    'release: train',
    'length: none',
    'speed: none',
    'acceleration: none',
    'clear: move',
    'clear: derived',
  ],
  ...[
    'start: packed',
    'start: [',
    'kind: random',
    'kind: levelled',
    'kind: pattern',
    'kind: list',
    'unload:',
    'load:',
    'work:',
    'worksInBreaks: true',
  ],
  ...['line: whole', 'transfer: ', 'clock: calendar', 'after: ', 'conveyorDuringBreaks: false'],
  ...['to: store', 'from: store', 'takes: ', 'push: ', 'pull: ', 'divert: free', 'merge: alternate', 'priority: [', 'start: store'],
  ...[
    'sections:',
    'operators:',
    'walks:',
    'operatorsNeeded: ',
    'accepts: ',
    'supply: { ',
    'times: [',
    'queue: ',
    'receiver: ',
    'safetyStop: ',
  ],
  ...['inspections:', 'rework:', 'repairCrews: 1'],
]

test('any line reads back identical from its complete form', { tags: 'long' }, () => {
  let read = 0
  const seen = new Map<string, number>()
  fc.assert(
    fc.property(anyLine, (line) => {
      const text = writeLine(line)
      for (const feature of FEATURES) if (text.includes(feature)) seen.set(feature, (seen.get(feature) ?? 0) + 1)
      const { scenario, problems } = readScenario(text)
      if (scenario === null) throw new Error(`${formatProblems(problems, text, 'line.yaml')}\n${text}`)
      expect(scenario.line).toEqual(line)
      read++
    }),
    { numRuns: 300, seed: 20260101 },
  )
  expect(read).toBeGreaterThanOrEqual(300)
  const rare = FEATURES.filter((feature) => (seen.get(feature) ?? 0) < 12)
  expect(rare).toEqual([])
})

const calendar = fc.record({
  judged: fc.constantFrom('second shift', 'day 2', 'late: shift'),
  shifts: fc.integer({ min: 1, max: 9 }),
  grossSeconds: time,
  netSeconds: time,
})

/** Titles, stops in groups and variants in groups, by the numbers drawn. */
function forPeople(line: LineSpec, draws: readonly number[]): Pick<Scenario, 'titles' | 'stopEntries' | 'variantGroups'> {
  const draw = (i: number): number => draws[i % draws.length]!
  const titled = (what: string, parts: readonly string[]): Record<string, string> =>
    Object.fromEntries(parts.flatMap((name, i) => (draw(i) < 2 ? [[name, `${what}: # ${i} "${name}"`]] : [])))
  const groups = new Map<string, { source: string; place: string }[]>()
  for (const [i, { name, part }] of line.breakdowns.entries()) {
    const group = draw(i) === 0 ? 'several' : name
    const place = { station: line.stations, zone: line.zones, transfer: line.zones, section: line.sections }[part.kind][part.index]!.name
    groups.set(group, [...(groups.get(group) ?? []), { source: name, place }])
  }
  return {
    titles: { tasks: titled('task', line.tasks), variants: titled('variant', line.variants) },
    stopEntries: [...groups].map(([name, sources], i) => ({ name, title: draw(i) === 1 ? `stop ${i}: "${name}"` : name, sources })),
    variantGroups: [
      { name: 'all', title: 'All / any', variants: line.variants.map((_, i) => i) },
      { name: line.variants[0]!, title: line.variants[0]!, variants: [0] },
    ],
  }
}

test('plan, calendar, turns, titles and groups read back with the line', { tags: 'long' }, () => {
  fc.assert(
    fc.property(
      anyLine,
      calendar,
      between(1, 999),
      fc.constantFrom('shift' as const, 'net hour' as const, '7.5 h' as const),
      anyName,
      anyName,
      fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 7 }),
      (line, given, units, per, title, question, draws) => {
        const { warmupSeconds, endSeconds } = line.window
        const net = given.netSeconds * given.shifts
        const periods = per === 'shift' ? given.shifts : per === 'net hour' ? net / 3600 : (endSeconds - warmupSeconds) / 27_000
        const unitsPerWindow = units * periods
        const scenario: Scenario = {
          name: title,
          question,
          line,
          plan: { units, per, unitsPerWindow },
          calendar: { ...given, taktSeconds: (given.netSeconds * given.shifts) / unitsPerWindow },
          layout: { turns: line.zones.map((_, i) => (i % 3 === 0 ? 'left' : i % 3 === 1 ? 'right' : null)) },
          ...forPeople(line, draws),
        }
        const text = writeScenario(scenario)
        expect(readScenario(text).scenario).toEqual(scenario)
      },
    ),
    { numRuns: 60, seed: 20260102 },
  )
})

test.each(['1e-6 per 100 cycles', '1.7e-6 %', '0.37 per 7 cycles', '1e-7 per 10 cycles'])(
  'a chance of %s comes back alike, however rare',
  (chance) => {
    const { scenario, problems } = readScenario(scenarioText(['', `stops:\n  jam: { at: Fit, chance: ${chance}, lasts: 5 s }`]))
    expect(problems).toEqual([])
    expect(readScenario(writeScenario(scenario!)).scenario?.line).toEqual(scenario!.line)
  },
)
