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

// What people and machine need a closer look at
export { screen } from './screening/screening.ts'
export type { ScreeningResult } from './screening/screening.ts'
export { GUIDANCE_WORDS } from './screening/finding.ts'
export type { ScreeningFinding, Guidance, GuidanceWord, Evidence, Permitted, ScreeningUnit } from './screening/finding.ts'
export type { ScreeningInputs, MeasuredWalk, OwnLimit, OwnLimitName, BodyPart } from './screening/inputs.ts'
export { lineFigures } from './screening/lineFigures.ts'
export type { LineFigures } from './screening/lineFigures.ts'
export type { Handlings } from './screening/people.ts'
export { measuredWalks, metresOf, walksOn } from './screening/walking.ts'
export type { Walked, WalkPart } from './screening/walking.ts'
export { separationDistance } from './screening/reach.ts'
export type { SeparationDistance } from './screening/reach.ts'
export { SCREENING_CAUTION, STANDARDS_TO_OPEN, RISK_REDUCTION, LOW_VOLTAGE } from './screening/caution.ts'

// Which alternative to take
export { decisionMatrix, anchoredScore, SWING } from './criteria/matrix.ts'
export type { MatrixInput, MatrixResult, MustHave, ScoredCriterion, WeightCase } from './criteria/matrix.ts'

// Whether it does what was promised
export { trialBand } from './acceptance/band.ts'
export type { TrialBand } from './acceptance/band.ts'
export { testPlan } from './acceptance/testPlan.ts'
export type { TestPlan, PlanRequest } from './acceptance/testPlan.ts'
export { sequentialPlan, standingOf, TRIALS_LEAST } from './acceptance/sequential.ts'
export type { SequentialPlan, TrialPaths, TrialStanding } from './acceptance/sequential.ts'
export { followUp, stationDeviations, SHIFTS_LEAST } from './acceptance/followUp.ts'
export type { FollowUpResult, JudgedWeek, RealWeek, PromiseState, MeasuredStation, StationDeviation } from './acceptance/followUp.ts'
export { stopDeviations, waitDeviations } from './acceptance/waitDeviations.ts'
export type { CountedStop, MeasuredWait, ModelStop, StopDeviation, WaitDeviation } from './acceptance/waitDeviations.ts'

// Pace, use and ramp-up
export { takt, lineEfficiency, balanceLoss, overallEffectiveness, STATE_TIMES } from './management/pace.ts'
export type { UnitTimes, Effectiveness } from './management/pace.ts'
export { learningFactor, rampUp, between } from './management/learning.ts'
export type { Learning, RampWeek } from './management/learning.ts'
