/** What the server of a notebook and the thread that carries it out say to each other: plain data. */
import type { Cell } from '../cells/cell.ts'
import type { StepMark } from '../load/steps.ts'
import type { RunNotebookOptions } from '../runner/run.ts'
import type { StepState } from '../runner/steps.ts'

/** What is asked of every run. */
export type WatchedOptions = Pick<RunNotebookOptions, 'replications' | 'seed' | 'workers' | 'long'>

/** What a thread is told. */
export type ToThread =
  | { readonly kind: 'run'; readonly id: number; readonly file: string; readonly options: WatchedOptions }
  /** what is being done is no longer wanted */
  | { readonly kind: 'stop' }

/** What it tells, by the run that it is about. */
export type FromThread = Said & { readonly id: number }

/** What is told of a run, and how it ended. */
export type Said =
  /** files that it is made of; `all`: whatever lies beside them may be one, too */
  | { readonly kind: 'follow'; readonly files: readonly string[]; readonly all: boolean }
  | { readonly kind: 'progress'; readonly line: string }
  /** the notebook and its scenario are read */
  | {
      readonly kind: 'begun'
      readonly question: string
      readonly scenarioName: string
      readonly steps: readonly StepMark[]
      /** of the steps, see `keysOf` */
      readonly keys: readonly string[]
    }
  /** `cells`: what an ended step has told */
  | { readonly kind: 'step'; readonly mark: StepMark; readonly state: StepState; readonly cells: readonly Cell[] }
  | { readonly kind: 'ended'; readonly outcome: Outcome }

export type Outcome =
  | {
      readonly kind: 'done'
      /** of the whole notebook */
      readonly cells: readonly Cell[]
      /** what a page has besides */
      readonly rest: readonly Cell[]
      /** told after the last step */
      readonly left: readonly Cell[]
      /** what failed, as sentences */
      readonly faults: readonly string[]
      /** studies: made, and as before */
      readonly made: number
      readonly recalled: number
      /** what is amiss with the store, one sentence; '': nothing */
      readonly store: string
    }
  /** nothing could be run */
  | { readonly kind: 'trouble'; readonly text: string }
  | { readonly kind: 'stopped' }
