import type { Cell } from './cell.ts'

export interface PageHead {
  /** the question: the page's heading */
  readonly question: string
  readonly scenarioName: string
  readonly date: Date
  /** repeats what made the page */
  readonly command: string
}

/** One self-contained HTML file: opens from disk, asks nobody for anything. */
export declare function writePage(head: PageHead, cells: readonly Cell[]): Promise<string>
