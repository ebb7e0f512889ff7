// The tale of one run
export { tracePauses } from './tracePauses.ts'
export { traceStory } from './traceStory.ts'
export type { TraceStory, TraceStoryOptions } from './traceStory.ts'

// Events of a run
export { TRACE_HEAD, traceLine } from './eventWords.ts'
export type { TraceEvent } from './eventWords.ts'
