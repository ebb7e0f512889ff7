// Which is best
export { bestTable } from '../select/bestTable.ts'
export type { BestTable, BestRow } from '../select/bestTable.ts'
export { knSteps } from '../select/kn.ts'
export type { KnRequest, KnChoice, KnElimination, KnOptions } from '../select/kn.ts'
export { procedureW, finalReplications } from '../select/procedureW.ts'
export type { TestedCount, CarrierAnswer, CountTable, ProcedureWStatus } from '../select/procedureW.ts'

// When a chance has been looked at
export { chanceLooks, nextLook } from '../infer/chanceLooks.ts'

// What several factors do
export { factorialEffects } from '../infer/factorialEffects.ts'
export type { FactorialEffects, MainEffect, Interaction } from '../infer/factorialEffects.ts'

// What limits a line
export { elasticity, exchangeElasticity, limitingParts } from '../bottleneck/elasticity.ts'
export type { ScaledOutputs } from '../bottleneck/elasticity.ts'
export { arrows } from '../bottleneck/arrows.ts'
export type { Arrows, ArrowCandidate } from '../bottleneck/arrows.ts'

// How few stations
export { fewestStations, smallestCycle } from '../balance/fewestStations.ts'
export type { Balance } from '../balance/fewestStations.ts'
export type { Tasks } from '../balance/precedence.ts'

// Long runs
export { mser5, warmupSentence } from '../warmup/mser5.ts'
export type { WarmupCut, WarmupStatus, RunEnd } from '../warmup/mser5.ts'
export { batchMeans } from '../infer/batchMeans.ts'
export type { BatchMeans, BatchCandidate } from '../infer/batchMeans.ts'
