// What a file says

// Tables
export { readCsv } from './csv.ts'
// Two of them
export type { Difference } from './differences.ts'
export { scenarioDifferences } from './differences.ts'
// Writing it
export type { ResolveResult } from './explain.ts'
export { resolveScenario } from './explain.ts'
// What is wrong with it
export { formatProblems } from './formatProblems.ts'
export { scenarioJsonSchema } from './jsonSchema.ts'
// Quantities and names, as files write them
export { nearest } from './nearest.ts'
export type { ScenarioNotes, StationNote, VariantNote } from './notes.ts'
export type { Problem, ProblemCode } from './problems.ts'
export { parseQuantity } from './quantity.ts'
// Reading it
export type { ReadOptions, ReadResult } from './read.ts'
export { readScenario } from './read.ts'
export type { ShortStop } from './resolve/stops.ts'
export type { Calendar, Layout, Plan, Scenario } from './scenario.ts'
export type { ScenarioFile } from './schema/file.ts'
export type { Variation } from './variations.ts'
export { applyVariation } from './variations.ts'
export { writeLine, writeScenario } from './write.ts'
