/** JSON Schemas of what commands print with `--json`, by name. */
import { assembleSchema } from './data/assembleDocument.ts'
import { balanceSchema } from './balanceDocument.ts'
import { carriersSchema } from './carriersDocument.ts'
import { compareSchema } from './compareDocument.ts'
import { driverSchema } from './driverDocument.ts'
import { forecastSchema } from './forecastDocument.ts'
import { gridSchema } from './gridDocument.ts'
import { lossSchema } from './lossDocument.ts'
import { orderSchema } from './orderDocument.ts'
import { acceptanceSchema, trialSchema } from './decision/acceptanceDocument.ts'
import { criteriaSchema } from './decision/criteriaDocument.ts'
import { followUpSchema } from './decision/followUpDocument.ts'
import { paybackSchema } from './decision/paybackDocument.ts'
import { promiseSchema } from './decision/promiseDocument.ts'
import { shiftsSchema } from './decision/shiftsDocument.ts'
import { screeningSchema } from './decision/screeningDocument.ts'
import type { Schema } from './schemaParts.ts'
import { runSchema } from './runSchema.ts'
import type { SchemaName } from './schemaNames.ts'
import { sweepSchema } from './sweepDocument.ts'
import { traceSchema } from './traceDocument.ts'
import { steadySchema } from './steadyDocument.ts'
import { mixSchema } from './data/mixDocument.ts'
import { stoplogSchema } from './data/stoplogDocument.ts'
import { timesSchema } from './data/timesDocument.ts'

export const DOCUMENT_SCHEMAS: Readonly<Record<Exclude<SchemaName, 'scenario'>, () => Schema>> = {
  run: runSchema,
  sweep: sweepSchema,
  carriers: carriersSchema,
  trace: traceSchema,
  balance: balanceSchema,
  compare: compareSchema,
  drivers: driverSchema,
  forecast: forecastSchema,
  grid: gridSchema,
  losses: lossSchema,
  order: orderSchema,
  payback: paybackSchema,
  criteria: criteriaSchema,
  promise: promiseSchema,
  shifts: shiftsSchema,
  acceptance: acceptanceSchema,
  trial: trialSchema,
  followup: followUpSchema,
  screen: screeningSchema,
  steady: steadySchema,
  times: timesSchema,
  stoplog: stoplogSchema,
  mix: mixSchema,
  assemble: assembleSchema,
}
