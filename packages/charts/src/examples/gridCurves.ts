import type { Figure } from '../draw/figure.ts'
import { gridCurves } from '../grid/gridCurves.ts'
import { gridExample } from './grid.ts'

export const gridCurvesExample = (): Figure => gridCurves(gridExample(false), { per: 'shift' })
