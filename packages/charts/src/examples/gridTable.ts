import type { Figure } from '../draw/figure.ts'
import { gridTable } from '../grid/gridTable.ts'
import { gridExample } from './grid.ts'

export const gridTableExample = (): Figure => gridTable(gridExample(false), { per: 'shift' })
/** A block for each level of the third factor. */
export const gridTableBlocksExample = (): Figure => gridTable(gridExample(true), { per: 'shift' })
