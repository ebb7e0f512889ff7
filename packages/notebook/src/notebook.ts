/** How a notebook is written: a TypeScript module whose default export is `notebook({ title, scenario }, body)`. */
import type { Scenario } from '@loopwright/scenario'
import type { SweepResult } from '@loopwright/study'
import type { CarrierSweepStory } from './carrierSweepStory.ts'
import type { Cell } from './cell.ts'

export interface NotebookHead {
  /** names the notebook in the terminal and in lists */
  readonly title: string
  /** path of the scenario file, from the folder the command is run in */
  readonly scenario: string
  /** heads the page; default: the question of the scenario */
  readonly question?: string
}

export interface Notebook {
  readonly kind: 'notebook'
  readonly head: NotebookHead
  readonly body: (context: NotebookContext) => Promise<void> | void
}

/** What a notebook can do. Each call adds cells, and prints them at once. */
export interface NotebookContext {
  readonly scenario: Scenario
  /** Simulates each carrier count in the same random worlds. Adds a cell that says so: the page's footer is made of it. */
  sweep(options: SweepRequest): Promise<SweepResult>
  /** The parts of the story that a carrier sweep tells, by name. Adds nothing by itself. */
  story(result: SweepResult): CarrierSweepStory
  /** Adds cells. */
  show(...cells: readonly Cell[]): void
  /** Adds running text, in Markdown; `##` opens a section. Lines may be indented like the code around them. */
  prose(markdown: string): void
}

export interface SweepRequest {
  /** counts to try, from the least to the most, both included; or a list */
  readonly carriers: { readonly from: number; readonly to: number } | readonly number[]
  /** per count; default 30 */
  readonly replications?: number
  /** default '1' */
  readonly seed?: string
}

/**
 * A notebook: which scenario, and what to do with it.
 *
 * @param head  title and scenario file
 * @param body  what to do, in order; may be async
 */
export function notebook(head: NotebookHead, body: Notebook['body']): Notebook {
  return { kind: 'notebook', head, body }
}

export function isNotebook(value: unknown): value is Notebook {
  return typeof value === 'object' && value !== null && (value as { kind?: unknown }).kind === 'notebook'
}
