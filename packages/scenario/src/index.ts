// What a file says
export type { Calendar, Layout, Plan, Scenario } from './scenario.ts'
export type { ScenarioNotes, StationNote, VariantNote } from './notes.ts'
export type { ShortStop } from './resolve/stops.ts'
export type { ScenarioFile } from './schema/file.ts'
// Reading it
export type { ReadOptions, ReadResult } from './read.ts'
export { readScenario } from './read.ts'
// What is wrong with it
export type { Problem, ProblemCode } from './problems.ts'
export { formatProblems } from './formatProblems.ts'
