// Reading it
export { readScenario } from './read.ts'
export type { FileRead, ReadOptions, ReadResult } from './read.ts'
export { readScenarioWith } from './changes/changes.ts'
export type { ChangeOptions, Changes } from './changes/changes.ts'
export { fileValues, timesScaled } from './changes/values.ts'
export type { ChangeValue, FileValues } from './changes/values.ts'
export { applyVariation } from './changes/variations.ts'
export type { Variation } from './changes/variations.ts'

// What it says
export type { Scenario, Calendar, Layout, Plan, StopEntry, StopSource, Titles, VariantGroup } from './scenario.ts'
export type { ShortStop, ScenarioNotes, ShiftStart, StationNote, TableNote, VariantNote } from './problems/notes.ts'

// What is wrong with it
export type { Problem, ProblemCode } from './problems/problems.ts'
export { formatProblems } from './problems/formatProblems.ts'
export { nearest } from '@loopwright/line/check'

// What people call its parts
export { titleOf, stopGroups, mixGroups } from './titles.ts'
export type { StopGroup, MixGroup, Titled } from './titles.ts'

// Two of them
export { scenarioDifferences } from './changes/differences.ts'
export type { Difference } from './changes/differences.ts'

// Writing it
export { writeScenario, writeLine } from './write/write.ts'
export { addVariation, variationText } from './write/addVariation.ts'
export { writeDistribution, writeColumn } from './write/distribution.ts'
export type { ColumnOfFile } from './write/distribution.ts'
export { putIntoText } from './changes/putIntoText.ts'
export type { TextChange } from './changes/putIntoText.ts'
export { completeForm, defaultsOf, resolveScenario } from './write/explain.ts'
export type { DefaultValue, Explained, ResolveResult } from './write/explain.ts'
export { scenarioJsonSchema } from './schema/jsonSchema.ts'
export { distributionRecordSchema } from './schema/distributionRecord.ts'
export type { ScenarioFile } from './schema/file.ts'

// Quantities and tables, as files write them
export { parseQuantity } from './text/quantity.ts'
export type { UnitTable } from './text/quantity.ts'
export { readCsv } from './text/csv.ts'
