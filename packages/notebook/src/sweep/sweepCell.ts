import { createHash } from 'node:crypto'
import { formatNumber } from '@loopwright/charts'
import type { Scenario } from '@loopwright/scenario'
import type { CarrierStudy, SweepResult } from '@loopwright/study'
import type { SweepCell } from '../cell.ts'
import { period } from './period.ts'

/**
 * What was simulated, and what somebody needs to get the same numbers again.
 *
 * @param scenarioFile  path as the reader would type it
 */
export function sweepCell(scenario: Scenario, result: SweepResult | CarrierStudy, scenarioFile: string): SweepCell {
  const counts = result.counts.map((count) => count.carriers)
  const span = counts.length === 1 ? `${counts[0]}` : `${Math.min(...counts)} to ${Math.max(...counts)}`
  const runs = result.counts.reduce((sum, count) => sum + count.replications, 0)
  const each = result.counts.map((count) => count.replications)
  const replications =
    result.kind === 'carrier sweep' || Math.min(...each) === Math.max(...each)
      ? `${result.replications}`
      : `${Math.min(...each)} to ${Math.max(...each)}`
  const pilot =
    result.kind === 'carrier study' && result.seed !== result.pilot.seed
      ? `; before, ${result.pilot.replications} of each with seed ${result.pilot.seed} to find where to begin`
      : ''
  return {
    kind: 'sweep',
    id: 'sweep',
    sentence: `${formatNumber(runs, 0)} ${period(scenario).many} simulated: ${span} carriers, ${replications} replications each, seed ${result.seed}${pilot}.`,
    provenance: {
      scenarioFile,
      scenarioHash: createHash('sha256').update(JSON.stringify(scenario.line)).digest('hex').slice(0, 12),
      seed: result.seed,
      replications: result.replications,
      engineVersion: result.engineVersion,
      partial: result.partial,
    },
  }
}
