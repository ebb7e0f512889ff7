/** In which order and beside what the cells of a tale stand on a page: the answer beside the picture that proves it, then sections, some of them folded. */
import type { Cell, ChartCell, PlanCell, ProseCell } from '../cells/cell.ts'

/** A heading and the cells under it. */
export interface Section {
  /** of the cell with the heading */
  readonly id: string
  readonly title: string
  /** what the folded section says; null: it stands open */
  readonly folded: string | null
  /** the first is the one with the heading */
  readonly cells: readonly Cell[]
}

export interface Layout {
  /** what stands before the first heading, but for the picture of the answer */
  readonly opening: readonly Cell[]
  /** stands beside the answer; null: none */
  readonly lead: ChartCell | PlanCell | null
  readonly sections: readonly Section[]
}

/** The picture of the answer is the first one before any heading. */
export function layoutOf(cells: readonly Cell[]): Layout {
  const at = cells.findIndex((cell) => titleOf(cell) !== null)
  const before = at < 0 ? cells : cells.slice(0, at)
  const lead = before.some(({ kind }) => kind === 'answer')
    ? (before.find((cell): cell is ChartCell | PlanCell => cell.kind === 'chart' || cell.kind === 'plan') ?? null)
    : null
  const sections: { id: string; title: string; folded: string | null; cells: Cell[] }[] = []
  for (const cell of at < 0 ? [] : cells.slice(at)) {
    const title = titleOf(cell)
    if (title !== null) sections.push({ id: cell.id, title, folded: (cell as ProseCell).folded ?? null, cells: [cell] })
    else sections.at(-1)!.cells.push(cell)
  }
  return { opening: before.filter((cell) => cell !== lead), lead, sections }
}

/** Of a heading that opens a section: "## Title" at the start of a cell. */
function titleOf(cell: Cell): string | null {
  if (cell.kind !== 'prose') return null
  return /^\s*##\s+([^\n]+)/.exec(cell.markdown)?.[1]?.trim() ?? null
}
