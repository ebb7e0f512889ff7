// Lines in the same worlds
export { compareLines } from './compareLines.ts'
export type { CompareRequest } from './compareLines.ts'
export type { CompareResult, ComparedLine, LineToCompare, LineAsked } from './comparison.ts'
export { growingComparison } from './growingComparison.ts'
export type { GrowingComparison, GrowingComparisonRequest } from './growingComparison.ts'

// A grid of settings
export { runGrid, gridLineCount, GRID_POINTS_MAX } from './runGrid.ts'
export type { GridRequest, GridResult, GridLine, GridAsked, GridPoint } from './runGrid.ts'
export { factorial } from './factorial.ts'
export type { Factor } from './factorial.ts'

// Ways to build a line
export { runAlternatives } from '../alternatives/runAlternatives.ts'
export type { AlternativesRequest, AlternativesResult, LinePeople } from '../alternatives/runAlternatives.ts'
