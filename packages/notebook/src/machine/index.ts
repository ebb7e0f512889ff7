// Loading a notebook
export { loadNotebook, lineOf, placeOf } from '../load/loadNotebook.ts'
export type { LoadedNotebook, LoadOptions, SourcePlace } from '../load/loadNotebook.ts'
export { NotebookFaults } from '../load/fault.ts'
export type { Fault } from '../load/fault.ts'
