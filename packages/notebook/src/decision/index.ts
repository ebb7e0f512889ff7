// The alternatives of a decision
export { chosenAlternative, needsShift } from './chosen.ts'
export type { ChosenAlternative } from './chosen.ts'
export { paybackOf, screeningsOf, needsMoney } from './decisionRuns.ts'
export { needsWalks, statesWalks } from './walked.ts'
export type { DecisionRuns } from './decisionRuns.ts'

// What they are worth, and which to take
export { paybackStory } from './paybackStory.ts'
export type { PaybackStory } from './paybackStory.ts'
export { screeningStory } from './screeningStory.ts'
export type { ScreeningStory } from './screeningStory.ts'
export { criteriaStory, criteriaOf } from './criteriaStory.ts'
export type { CriteriaStory, CriteriaResult } from './criteriaStory.ts'

// What is promised of one
export { promiseStory } from './promiseStory.ts'
export type { PromiseStory } from './promiseStory.ts'
export { promiseRunsOf } from './promiseRuns.ts'
export type { PromisedShifts } from './promiseRuns.ts'
export { shiftsStory } from './shiftsStory.ts'
export type { ShiftsStory } from './shiftsStory.ts'
export { shiftsOf, shiftSection, shiftSeed, shiftChanges } from './shiftsFigures.ts'
export type { ShiftsRuns, ShiftsResult } from './shiftsFigures.ts'
export { promiseOf, workSeconds } from './promiseFigures.ts'
export type { PromiseResult, PromiseRuns } from './promiseFigures.ts'

// Whether it does what was promised
export { acceptanceStory, acceptanceOf } from './acceptanceStory.ts'
export type { AcceptanceStory, AcceptanceResult } from './acceptanceStory.ts'
export { trialStory, trialOf } from './trialStory.ts'
export type { TrialStory, TrialResult } from './trialStory.ts'
export { followUpOf } from './followUpRuns.ts'
export { stopNames } from '../study/stopCauses.ts'
export type { CountedReality, FollowUpStudies } from './followUpRuns.ts'
export { followUpStory } from './followUpStory.ts'
export type { FollowUpStory, FollowUpRuns } from './followUpStory.ts'
