import type { Scenario } from '@loopwright/scenario'
import type { RunCell } from '../cells/cell.ts'
import { period } from '../sweep/period.ts'
import { seedWords } from '../words/seedWords.ts'
import { lineMark } from './lineMark.ts'

/** What was run, and by which engine. */
export interface Simulated {
  readonly seed: string
  /** per line */
  readonly replications: number
  readonly engineVersion: string
  readonly partial: boolean
}

/**
 * What a study simulated, and what somebody needs to get the same numbers again.
 *
 * @param id            unique within the notebook
 * @param scenarioFile  path as the reader would type it
 * @param what          such as "3 lines in the same simulated shifts"
 * @param lines         how many there are: of several it is said that each has so many
 * @example simulatedCell('simulated', scenario, 'ring.yaml', { seed: '1', replications: 30, engineVersion: '0.1.0', partial: false }, 'two lines').sentence // => 'two lines: 30 shifts of each, seed 1 (the same seed, the same numbers).'
 */
export function simulatedCell(
  id: string,
  scenario: Scenario,
  scenarioFile: string,
  simulated: Simulated,
  what: string,
  lines: 'one' | 'several' = 'several',
): RunCell {
  const { seed, replications, engineVersion, partial } = simulated
  const { one, many } = period(scenario)
  return {
    kind: 'run',
    id,
    sentence: `${what}: ${replications === 1 ? `1 ${one}` : `${replications} ${many}`}${lines === 'one' ? '' : ' of each'}, ${seedWords(seed)}.`,
    provenance: {
      scenarioFile,
      scenarioHash: lineMark(scenario.line),
      seed,
      replications,
      engineVersion,
      partial,
    },
  }
}
