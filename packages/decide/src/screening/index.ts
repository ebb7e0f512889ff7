// What people and machine need a closer look at
export { screen, NOTHING_GIVEN } from './screening.ts'
export type { ScreeningResult } from './screening.ts'
export { GUIDANCE_WORDS } from './finding.ts'
export type { ScreeningFinding, Guidance, GuidanceWord, Evidence, Permitted, ScreeningUnit } from './finding.ts'
export type { ScreeningInputs, MeasuredWalk, OwnLimit, OwnLimitName, BodyPart } from './inputs.ts'
export { lineFigures } from './lineFigures.ts'
export type { LineFigures } from './lineFigures.ts'
export type { Handlings } from './people.ts'

// How far people walk
export { measuredWalks, metresOf, walksOn } from './walking.ts'
export type { Walked, WalkPart } from './walking.ts'

// How far away a scanner stands
export { separationDistance } from './reach.ts'
export type { SeparationDistance } from './reach.ts'

// Words that stand beside every figure
export { SCREENING_CAUTION, STANDARDS_TO_OPEN, RISK_REDUCTION, LOW_VOLTAGE } from './caution.ts'
