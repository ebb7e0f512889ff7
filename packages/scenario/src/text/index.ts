// A text as values that know their place
export { readSource } from './source.ts'
export { describe, joinPath } from './located.ts'
export type { Located, Entry, Kind } from './located.ts'

// What is wrong with it
export { createReport } from '../problems/report.ts'
export type { Report } from '../problems/report.ts'
