/** The example of a decision, its alternatives simulated a few times: what the tales of decisions are tried on. */
import { readFileSync } from 'node:fs'
import { type Decision, readDecision } from '@loopwright/decide'
import type { DecisionRuns } from '@loopwright/notebook'
import { readScenario, readScenarioWith, type Scenario } from '@loopwright/scenario'
import { runAlternatives } from '@loopwright/study'

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
  const result = await runAlternatives(lines, { replications }, { seed: '1', workers: 0 })
  return { decision, file: 'base-line.decision.yaml', scenarios, result }
}
