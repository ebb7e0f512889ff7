// Loading a notebook
export { loadNotebook, lineOf, placeOf } from '../load/loadNotebook.ts'
export type { LoadedNotebook, LoadOptions, SourcePlace } from '../load/loadNotebook.ts'
export { NotebookFaults } from '../load/fault.ts'
export type { Fault } from '../load/fault.ts'

// Writing one while it is shown
export { watchNotebook } from '../watch/watchNotebook.ts'
export type { WatchOptions } from '../watch/watchNotebook.ts'
export { answerRuns } from '../watch/answerRuns.ts'
export type { ThreadWorld, Port } from '../watch/answerRuns.ts'
export type { ToThread } from '../watch/protocol.ts'

// Handing it out
export { figureSvgs } from '../handout/figureSvgs.ts'
export type { FigureSvg } from '../handout/figureSvgs.ts'
export { pngOf } from '../handout/png.ts'
export { slidesOf } from '../handout/slides.ts'
export type { SlidesHead } from '../handout/slides.ts'
