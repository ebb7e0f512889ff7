// What a sweep tells
export type { Law, LawTerms } from '@loopwright/line'
export type { NotConfirmed, StationShares, SweepAnswer, SweepCount, SweepResult, ZoneShares } from './sweepResult.ts'
