// What a file says

// Changes of a file, by path
export type { ChangeOptions, Changes, ChangeValue } from './changes/changes.ts'
export { readScenarioWith } from './changes/changes.ts'
// Tables
export { readCsv } from './text/csv.ts'
// Two of them
export type { Difference } from './changes/differences.ts'
export { scenarioDifferences } from './changes/differences.ts'
// Writing it
export type { ResolveResult } from './write/explain.ts'
export { resolveScenario } from './write/explain.ts'
// What is wrong with it
export { formatProblems } from './problems/formatProblems.ts'
export { scenarioJsonSchema } from './schema/jsonSchema.ts'
// Quantities and names, as files write them
export { nearest } from '@loopwright/line'
export type { ScenarioNotes, ShiftStart, ShortStop, StationNote, TableNote, VariantNote } from './problems/notes.ts'
export type { Problem, ProblemCode } from './problems/problems.ts'
export { parseQuantity } from './text/quantity.ts'
// Reading it
export type { ReadOptions, ReadResult } from './read.ts'
export { readScenario } from './read.ts'
export type { Calendar, Layout, Plan, Scenario, StopEntry, StopSource, Titles, VariantGroup } from './scenario.ts'
export type { ScenarioFile } from './schema/file.ts'
// What people call its parts
export type { MixGroup, StopGroup, Titled } from './titles.ts'
export { mixGroups, stopGroups, titleOf } from './titles.ts'
export type { Variation } from './changes/variations.ts'
export { applyVariation } from './changes/variations.ts'
export { writeLine, writeScenario } from './write/write.ts'
