// Reading it
export { readDecision } from './reading/readDecision.ts'
export type { DecisionResult } from './reading/readDecision.ts'
export type { Decision, Alternative, AlternativeSource, MoneySection } from './reading/decision.ts'

// What money an alternative saves
export { payback } from './money/payback.ts'
export type { PaybackResult, PaybackOf, PaybackOptions } from './money/payback.ts'
export type { Doubted, MoneyInputs, PricedLine } from './money/pricedLine.ts'
export type { MoneySpread, Range } from './money/spread.ts'
export type { BreakEven, BreakEvenCurve, BreakEvenInput, BreakEvenPoint } from './money/breakEven.ts'
export { annualSavings } from './money/savings.ts'
export type { Rates, Savings, Use } from './money/savings.ts'
export { naiveSaving } from './money/naive.ts'
export type { NaiveSaving } from './money/naive.ts'
export { overtimeMinutes, netRate } from './money/overtime.ts'

// What money over years is worth
export { projectWorth, netPresentValue, internalReturn, paybackMonths, discountedPaybackYears } from './money/cashFlow.ts'
export type { Project, Worth, ReturnRate } from './money/cashFlow.ts'
export { MoneyError } from './money/moneyError.ts'

// What people and machine need a closer look at
export { screen, NOTHING_GIVEN } from './screening/screening.ts'
export type { ScreeningResult } from './screening/screening.ts'
export { compareWith, GUIDANCE_WORDS } from './screening/finding.ts'
export type {
  ScreeningFinding,
  FindingParts,
  Guidance,
  GuidanceWord,
  Evidence,
  Permitted,
  ScreeningUnit,
} from './screening/finding.ts'
export { OWN_LIMITS } from './screening/inputs.ts'
export type { ScreeningInputs, OwnLimit, OwnLimitName, BodyPart } from './screening/inputs.ts'
export { lineFigures } from './screening/lineFigures.ts'
export type { LineFigures } from './screening/lineFigures.ts'
export { handlingFindings } from './screening/people.ts'
export type { Handlings } from './screening/people.ts'
export { rollingForce, startingForce } from './screening/pushForce.ts'
export { separationDistance } from './screening/reach.ts'
export type { SeparationDistance } from './screening/reach.ts'
export { driveForce, sweptWidth } from './screening/conveyor.ts'
export { SCREENING_CAUTION, STANDARDS_TO_OPEN, RISK_REDUCTION, LOW_VOLTAGE } from './screening/caution.ts'
