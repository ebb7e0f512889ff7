/** The runner: a notebook's module in, its cells, its text on the terminal and its page out. */
import type { Problem } from '@loopwright/scenario'
import type { Cell } from './cell.ts'
import type { Effects } from './effects.ts'

export interface RunNotebookOptions {
  /** where the page goes; default `out/<name of the notebook>.html` */
  readonly out?: string
  /** replaces what the notebook asks for: for a quick look */
  readonly replications?: number
  readonly seed?: string
  /** threads; default: all cores */
  readonly workers?: number
  /** bold and colours in the terminal; default false */
  readonly colour?: boolean
  /** printed in the page's footer; default `loopwright notebook <file>` */
  readonly command?: string
}

export type NotebookRun =
  | { readonly status: 'done' | 'partial'; readonly cells: readonly Cell[]; readonly page: string; readonly problems: readonly Problem[] }
  | { readonly status: 'wrong scenario'; readonly scenarioFile: string; readonly scenarioText: string; readonly problems: readonly Problem[] }

/** Runs a notebook. Errors of the notebook's own code are thrown on. */
export declare function runNotebook(file: string, effects: Effects, options?: RunNotebookOptions): Promise<NotebookRun>
