import { formatNumber } from '@loopwright/charts/table'
import { type CautionCell, warningCell } from '../cells/cell.ts'
import type { Period } from '../sweep/period.ts'

/**
 * Says that a study was stopped, and how much of it is there; nothing where it was not.
 *
 * @param id    of the story, which begins the cell's own
 * @param done  windows of each line that are there
 */
export function stoppedEarly(
  id: string,
  { partial, replications }: { readonly partial: boolean; readonly replications: number },
  done: number,
  { many }: Pick<Period, 'many'>,
): CautionCell[] {
  if (!partial) return []
  const words = `${formatNumber(done, 0)} of ${formatNumber(replications, 0)} ${many} are simulated. The intervals are wider than asked for.`
  return [warningCell(`${id}-partial`, 'Stopped early', words)]
}
