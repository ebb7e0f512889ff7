import { formatNumber } from '@loopwright/charts/table'
import type { CarrierStudy, SweepResult } from '@loopwright/study'
import type { Scenario } from '@loopwright/scenario'
import type { SweepCell } from '../cells/cell.ts'
import { carriersText } from './answerWords.ts'
import { seedWords } from '../words/seedWords.ts'
import { period } from './period.ts'
import { lineMark } from '../study/lineMark.ts'

/**
 * What was simulated, and what somebody needs to get the same numbers again.
 *
 * @param scenarioFile  path as the reader would type it
 */
export function sweepCell(scenario: Scenario, result: SweepResult | CarrierStudy, scenarioFile: string): SweepCell {
  const counts = result.counts.map((count) => count.carriers)
  const { many } = period(scenario)
  const span = counts.length === 1 ? carriersText(counts[0]!) : `${Math.min(...counts)} to ${Math.max(...counts)} carriers`
  const runs = result.counts.reduce((sum, count) => sum + count.replications, 0)
  const each = result.counts.map((count) => count.replications)
  const [least, most] = [Math.min(...each), Math.max(...each)]
  const replications = least === most ? formatNumber(most, 0) : `${formatNumber(least, 0)} to ${formatNumber(most, 0)}`
  const perCount = counts.length === 1 ? '' : `, ${replications} for each count`
  const pilot =
    result.kind === 'carrier study' && result.seed !== result.pilot.seed
      ? `; before that ${formatNumber(result.pilot.replications, 0)} of each, seed ${result.pilot.seed}, to find where to begin`
      : ''
  return {
    kind: 'sweep',
    id: 'sweep',
    sentence: `${formatNumber(runs, 0)} ${runs === 1 ? many.slice(0, -1) : many} simulated with ${span}${perCount}, ${seedWords(result.seed)}${pilot}.`,
    provenance: {
      scenarioFile,
      scenarioHash: lineMark(scenario.line),
      seed: result.seed,
      replications: result.replications,
      engineVersion: result.engineVersion,
      partial: result.partial,
    },
  }
}
