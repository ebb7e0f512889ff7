/** The example of a decision, its alternatives simulated a few times: what the tales of decisions are tried on. */
import { readFileSync } from 'node:fs'
import { type Decision, readDecision } from '@loopwright/decide'
import { forecastOf } from '@loopwright/notebook'
import { type DecisionRuns, type PromiseRuns, shiftSection, shiftSeed, type ShiftsRuns, statesWalks } from '@loopwright/notebook/decision'
import { applyVariation, readScenario, readScenarioWith, type Scenario } from '@loopwright/scenario'
import { sweepCarriers } from '@loopwright/study'
import type { TrialsResult } from '@loopwright/study/trials'
import { runAlternatives } from '@loopwright/study/compare'
import { keptRuns } from './keptRuns.ts'

const FOLDER = new URL('../../scenarios/base-line-decision/', import.meta.url)
const textOf = (path: string): string => readFileSync(new URL(path, FOLDER), 'utf8')

/** As the file has it; `change` makes another of its text. */
export function decisionExample(change: (text: string) => string = (text) => text): Decision {
  const { decision, problems } = readDecision(change(textOf('base-line.decision.yaml')))
  if (decision === null) throw new Error(JSON.stringify(problems))
  return decision
}

/** @param replications  windows of each alternative */
export async function decisionRuns(replications: number, decision: Decision = decisionExample()): Promise<DecisionRuns> {
  const scenarios = decision.alternatives.map(({ source }): Scenario => {
    const text = textOf(source.kind === 'file' ? source.file : decision.scenario)
    const { scenario } = source.kind === 'set' ? readScenarioWith(text, source.changes) : readScenario(text)
    if (scenario === null) throw new Error('the example has errors')
    return scenario
  })
  const lines = scenarios.map(({ line, plan }, index) => ({
    name: decision.alternatives[index]!.name,
    line,
    plan: plan?.unitsPerWindow ?? null,
  }))
  const result = await runAlternatives(lines, { replications, cycles: statesWalks(decision) }, { seed: '1', workers: 0, store: keptRuns() })
  return { decision, file: 'base-line.decision.yaml', scenarios, result }
}

/** What the example promises, from so many simulated shifts. */
export async function promiseRuns(replications: number): Promise<PromiseRuns> {
  const decision = decisionExample()
  const section = decision.promise!
  const { scenario } = readScenario(textOf(decision.scenario))
  const { line, plan } = scenario!
  const sweep = await sweepCarriers(
    line,
    { counts: [line.carriers.count], replications, plan: plan!.unitsPerWindow },
    { seed: '1', workers: 0, store: keptRuns() },
  )
  const { units } = sweep.counts[0]!
  const mean = units.reduce((sum, one) => sum + one, 0) / units.length
  return {
    name: decision.alternatives[section.of]!.name,
    scenario: scenario!,
    section,
    crew: 8,
    forecast: forecastOf(scenario!, sweep, section.daysPerWeek * section.shiftsPerDay),
    slower: [1, 1.5, 2.6].map((factor) => ({ factor, mean: mean / factor })),
  }
}

/** The example whose three shifts differ, from so many simulated shifts of each; learning made up. */
export async function shiftsRuns(replications: number): Promise<ShiftsRuns> {
  const folder = new URL('../../scenarios/three-shifts/', import.meta.url)
  const { decision } = readDecision(readFileSync(new URL('three-shifts.decision.yaml', folder), 'utf8'))
  const section = decision!.promise!
  const text = readFileSync(new URL(decision!.scenario, folder), 'utf8')
  const shifts: PromiseRuns[] = []
  for (const [index, shift] of section.shifts!.entries()) {
    const { scenario } = readScenario(shift.variation === null ? text : applyVariation(text, shift.variation).text!)
    const { line, plan } = scenario!
    const options = { seed: shiftSeed('1', index), workers: 0, store: keptRuns() }
    const sweep = await sweepCarriers(line, { counts: [line.carriers.count], replications, plan: plan!.unitsPerWindow }, options)
    const { units } = sweep.counts[0]!
    const mean = units.reduce((sum, one) => sum + one, 0) / units.length
    shifts.push({
      name: shift.name,
      scenario: scenario!,
      section: shiftSection(section, shift),
      crew: shift.crew,
      forecast: forecastOf(scenario!, sweep, shift.daysPerWeek),
      slower: [1, 1.5, 2.6].map((factor) => ({ factor, mean: mean / factor })),
    })
  }
  return { name: 'as it stands', section, shifts }
}

/** Trials made up: 100 to 104 units of a line that meets its forecast, 80 of the slower one, two looks. */
export const madeUpTrials = (): TrialsResult => ({
  kind: 'trials',
  engineVersion: '0.1.0',
  seed: '1',
  replications: 80,
  partial: false,
  seconds: 3600,
  looks: [1800, 3600],
  longer: 0.1,
  healthy: Array.from({ length: 80 }, (_, trial) => [50 + (trial % 3), 100 + (trial % 5)]),
  slower: Array.from({ length: 80 }, () => [40, 80]),
})
