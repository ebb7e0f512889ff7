// What is wrong with a line, for those that read it from elsewhere
export { checkLine } from './checkLine.ts'
export { isRing } from './draftLine.ts'
export type { DraftLine } from './draftLine.ts'
export { checkParts } from './physical.ts'
export { checkFlow } from './flow.ts'
export { productZones } from './reach.ts'
export { longestStay, meanStay } from './meanStay.ts'
export { nameFault, titleFault } from './nameFault.ts'
export { CLOCK_STEP } from './clockStep.ts'
export { REACH_SECONDS, timeReach } from './timeReach.ts'

// How it is told
export { tellTogether } from './finding.ts'
export type { Finding, Place } from './finding.ts'
export { sentences } from './sentences.ts'
export { sentenceWords } from './sentence.ts'
export type { Sentence } from './sentence.ts'
export { nearest } from './nearest.ts'
