/** What limits a line with one number of carriers, told from its own runs and the limits of its mean times. */
import { lineLimits } from '@loopwright/line/bounds'
import type { Scenario } from '@loopwright/scenario'
import { diagnose, type Diagnosis, type SweepCount } from '@loopwright/study'
import { type LimitWarning, limitWarnings, withCarriers } from '@loopwright/study/change'
import { meanOf } from '@loopwright/stats'
import { type ProseCell, proseCell } from '../cells/cell.ts'
import type { Period } from '../sweep/period.ts'
import { markdownOf } from '../words/markdownOf.ts'
import { diagnosisSentences } from './diagnosisWords.ts'

/**
 * @param count  with its station shares
 * @returns  null: no replication is in, or the runs stood still, so that what waits is the standstill
 */
export function limitedBy({ line }: Scenario, count: SweepCount, words: Period): ProseCell | null {
  if (count.replications === 0 || count.gridlocks > 0) return null
  const units = meanOf(count.units)
  const spec = withCarriers(line, count.carriers)
  const limits = lineLimits(spec)
  const diagnosis = diagnose({ line: spec, shares: count.stations.map(({ shares }) => shares), units, limits })
  const said = isSaid(diagnosis, limitWarnings(spec, words.plan, limits))
  return {
    ...proseCell('limited-by', markdownOf(diagnosisSentences(diagnosis, spec, words, said).join(' '))),
    aside: 'Why not more',
  }
}

/** A warning of the plan tells already what the limit allows. */
function isSaid({ limitedBy }: Diagnosis, warnings: readonly LimitWarning[]): boolean {
  return warnings.some(
    (warning) =>
      warning.code === 'plan above a limit' &&
      limitedBy !== null &&
      warning.limit.kind === limitedBy.kind &&
      warning.limit.name === limitedBy.name,
  )
}
