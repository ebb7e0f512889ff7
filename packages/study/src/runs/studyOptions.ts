import type { PoolOptions } from './openPool.ts'

/** How a study is carried out: `await study(line, request, options)`. Of all this the seed alone decides what comes out. */
export interface StudyOptions<Progress extends StudyProgress = StudyProgress> extends PoolOptions {
  /** names the random worlds; not empty, without `/` */
  readonly seed: string
  /** told after each chunk of runs */
  readonly onProgress?: (progress: Progress) => void
  /** stops the study within a second; what is in by then is the result, marked partial */
  readonly signal?: AbortSignal
}

/** How far a study has come. */
export interface StudyProgress {
  /** replications, those of a pilot too */
  readonly done: number
  readonly total: number
  /** the total will not grow */
  readonly settled: boolean
  /** of those done: how many came from a store */
  readonly recalled: number
  /** largest half-width of a 95 % interval of a mean output, as a share of it, among the lines that run; null while one of them has fewer than 2 replications */
  readonly precision: number | null
  /** what is being decided now, where the study says so */
  readonly what?: string
}

/** How a study is carried out that is told while it grows: in the calling thread, in the worlds of the seed that it was opened with. */
export interface GrowingOptions<Result> {
  /** told after each stage, with whether it is the last */
  readonly onStage?: (result: Result, last: boolean) => void
  /** stops it before the next few replications; nothing more is told then */
  readonly signal?: AbortSignal | undefined
}
