import type { Figure } from '../figure.ts'
import { gridCurves } from '../gridCurves.ts'
import { gridExample } from './grid.ts'

export const gridCurvesExample = (): Figure => gridCurves(gridExample(false), { per: 'shift' })
