/** JSON Schemas of what the studies print with `--json`, by name. */
import { balanceSchema } from './balanceDocument.ts'
import { compareSchema } from './compareDocument.ts'
import { driverSchema } from './driverDocument.ts'
import { forecastSchema } from './forecastDocument.ts'
import { gridSchema } from './gridDocument.ts'
import { lossSchema } from './lossDocument.ts'
import { orderSchema } from './orderDocument.ts'
import { paybackSchema } from './paybackDocument.ts'
import { screeningSchema } from './screeningDocument.ts'
import type { Schema } from './schemaParts.ts'
import { steadySchema } from './steadyDocument.ts'
import { timesSchema } from './timesDocument.ts'

export const STUDY_SCHEMAS: Readonly<
  Record<
    'balance' | 'compare' | 'drivers' | 'forecast' | 'grid' | 'losses' | 'order' | 'payback' | 'screen' | 'steady' | 'times',
    () => Schema
  >
> = {
  balance: balanceSchema,
  compare: compareSchema,
  drivers: driverSchema,
  forecast: forecastSchema,
  grid: gridSchema,
  losses: lossSchema,
  order: orderSchema,
  payback: paybackSchema,
  screen: screeningSchema,
  steady: steadySchema,
  times: timesSchema,
}
