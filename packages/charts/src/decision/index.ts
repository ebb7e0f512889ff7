// Money
export { breakEven } from '../money/breakEven.ts'
export type { BreakEvenLine, BreakEvenOptions } from '../money/breakEven.ts'

// What to take, and how sure that is
export { criteriaWins } from './criteriaWins.ts'
export type { CriteriaWinner, CriteriaWinsOptions } from './criteriaWins.ts'
export { criteriaCases } from './criteriaCases.ts'
export type { CriteriaCase, CriteriaCasesOptions, WeightChange } from './criteriaCases.ts'

// Until it runs, and whether it does what was promised
export { rampUpChart } from './rampUpChart.ts'
export type { RampUpOptions, RampUpWeek } from './rampUpChart.ts'
export { timeLosses } from './timeLosses.ts'
export type { TimeLoss, TimeLossesOptions } from './timeLosses.ts'
export { trialLooks } from './trialLooks.ts'
export type { TrialLook, TrialLooksOptions } from './trialLooks.ts'
export { countedWeeks } from './countedWeeks.ts'
export type { CountedWeek } from './countedWeeks.ts'
export { workDeviations } from './workDeviations.ts'
export type { WorkDeviation } from './workDeviations.ts'
