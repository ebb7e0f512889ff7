// Reading it
export { readDecision } from './reading/readDecision.ts'
export type { DecisionResult } from './reading/readDecision.ts'
export type {
  Decision,
  Alternative,
  AlternativeSource,
  MoneySection,
  CriteriaSection,
  CriterionSection,
  ComputedFigure,
  AcceptanceSection,
  PromiseSection,
  ShiftSection,
} from './reading/decision.ts'

// What money an alternative saves
export { payback } from './money/payback.ts'
export type { PaybackResult, PaybackOf, PaybackOptions } from './money/payback.ts'
export type { Doubted, MoneyInputs, PricedLine } from './money/pricedLine.ts'
export type { MoneySpread, Range } from './money/spread.ts'
export type { BreakEven, BreakEvenCurve, BreakEvenInput, BreakEvenPoint } from './money/breakEven.ts'
export type { Rates, Savings, Use } from './money/savings.ts'
export type { NaiveSaving } from './money/naive.ts'
export { netRate, overtimeMinutes } from './money/overtime.ts'

// What money over years is worth
export { projectWorth, netPresentValue, internalReturn, paybackMonths } from './money/cashFlow.ts'
export type { Project, Worth, ReturnRate } from './money/cashFlow.ts'
export { MoneyError } from './money/moneyError.ts'

// Which alternative to take
export { decisionMatrix, anchoredScore, SWING } from './criteria/matrix.ts'
export type { MatrixInput, MatrixResult, MustHave, ScoredCriterion, WeightCase } from './criteria/matrix.ts'

// Pace, use and ramp-up
export { takt, lineEfficiency, balanceLoss, overallEffectiveness, STATE_TIMES } from './management/pace.ts'
export type { UnitTimes, Effectiveness } from './management/pace.ts'
export { learningFactor, rampUp, between } from './management/learning.ts'
export type { Learning, RampWeek } from './management/learning.ts'
