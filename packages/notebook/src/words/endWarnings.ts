/** Warnings of runs of one line that ended before their time: it stood still, or its list of products ran out. */
import type { LineSpec } from '@loopwright/line'
import { type CautionCell, warningCell } from '../cells/cell.ts'
import type { Period } from '../sweep/period.ts'
import { counted } from './countedWords.ts'
import { listEndsWarning } from './listEnds.ts'

/** The line as it stands, in the runs of a study that changes something in it. */
export interface EndedRuns {
  readonly line: Pick<LineSpec, 'stations'>
  readonly gridlocks: number
  readonly outOfProducts: number
  readonly runs: number
}

/** @param these  what then tells little: "losses" */
export function endWarnings(id: string, ended: EndedRuns, these: string, words: Pick<Period, 'one' | 'many' | 'line'>): CautionCell[] {
  const { gridlocks, runs } = ended
  const { one, many, line } = words
  const still =
    gridlocks === 0
      ? []
      : [
          warningCell(
            `${id}-gridlock`,
            `Gridlock: the ${line} stands still`,
            `As it stands it stood still for good in ${gridlocks === runs ? 'all' : `${gridlocks} of`} ${counted(runs, one, many)}. Such a ${one} counts with what was made before, so that these ${these} tell little of a ${line} that keeps moving.`,
          ),
        ]
  return [...still, ...listEndsWarning(`${id}-products`, [{ name: 'as it stands', ...ended }], words)]
}
