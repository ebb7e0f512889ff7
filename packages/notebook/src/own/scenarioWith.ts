/** The scenario of a notebook with other values by path, as under `variations`. */
import { type Changes, formatProblems, readScenarioWith, type Scenario } from '@loopwright/scenario'
import { Mistake } from '../load/fault.ts'
import { shown } from '../runner/knownNames.ts'

/** The scenario of a notebook, and the same with changes. */
export interface NotebookScenario extends Scenario {
  /** The same scenario with other values by path: `scenario.with({ 'drive.speed': '12 m/min' })`. */
  with(changes: Changes): NotebookScenario
}

export interface ScenarioSource {
  readonly file: string
  readonly text: string
  readonly readBeside: (path: string) => string | null
}

/** @param made  changes that are in it already */
export function scenarioWith(source: ScenarioSource, scenario: Scenario, made: Changes = {}): NotebookScenario {
  const change = (changes: Changes): NotebookScenario => {
    if (typeof changes !== 'object' || changes === null || Object.keys(changes).length === 0)
      throw new Mistake(
        `scenario.with takes changes by path, not ${shown(changes)}`,
        "Write `scenario.with({ 'drive.speed': '12 m/min' })`.",
        'with',
      )
    const all = { ...made, ...changes }
    const { scenario: changed, problems } = readScenarioWith(source.text, all, { files: source.readBeside })
    if (changed === null) {
      const wrong = problems.filter(({ severity }) => severity === 'error')
      const path = Object.keys(changes).find((each) => wrong.some((problem) => problem.change?.startsWith(`${each}=`)))
      throw new Mistake(formatProblems(wrong, source.text, source.file), '', path ?? null)
    }
    return scenarioWith(source, changed, all)
  }
  // no part of the data: it is neither copied nor compared
  return Object.defineProperty({ ...scenario }, 'with', { value: change }) as NotebookScenario
}
