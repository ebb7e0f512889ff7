/** In which order and beside what the cells of a tale stand on a page: the answer beside the picture that proves it, then sections, some of them folded. */
import { type AnswerCell, type Cell, type ChartCell, type PlanCell, type ProseCell, proseCell } from '../cells/cell.ts'

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
  /** what stands before the first heading, but for what stands with the answer; the lead, too, as its numbers stand there */
  readonly opening: readonly Cell[]
  /** stands beside the answer; null: none */
  readonly lead: ChartCell | PlanCell | null
  /** stand with the answer, each under its title, one of each title */
  readonly asides: readonly ProseCell[]
  readonly sections: readonly Section[]
}

/** Where no answer stands before any heading, the one that leads opens the page. The picture of the answer is the first that is made for it, else the first one before any heading. What the reader may change is the first section. */
export function layoutOf(all: readonly Cell[]): Layout {
  const cells = all.filter(({ kind }) => kind !== 'live')
  const answered = cells.some(({ kind }) => kind === 'answer')
  const asides = answered ? asidesOf(cells) : []
  const left = cells.filter((cell) => !asides.includes(cell as ProseCell))
  const at = left.findIndex((cell) => titleOf(cell) !== null)
  const before = at < 0 ? left : left.slice(0, at)
  const isPicture = (cell: Cell): cell is ChartCell | PlanCell => cell.kind === 'chart' || cell.kind === 'plan'
  const made = left.find((cell): cell is ChartCell => cell.kind === 'chart' && cell.lead === true)
  const lead = answered ? (made ?? before.find(isPicture) ?? null) : null
  const sections: { id: string; title: string; folded: string | null; cells: Cell[] }[] = all
    .filter((cell) => cell.kind === 'live')
    .map((cell) => ({ id: LIVE_HEADING.id, title: 'What if?', folded: null, cells: [LIVE_HEADING, cell] }))
  for (const cell of at < 0 ? [] : left.slice(at)) {
    const title = titleOf(cell)
    if (title !== null) sections.push({ id: cell.id, title, folded: (cell as ProseCell).folded ?? null, cells: [cell] })
    else sections.at(-1)!.cells.push(cell)
  }
  const opens = before.some(({ kind }) => kind === 'answer')
    ? undefined
    : left.find((cell): cell is AnswerCell => cell.kind === 'answer' && cell.lead === true)
  return { opening: opens === undefined ? before : [{ ...opens, id: `${opens.id}-first` }, ...before], lead, asides, sections }
}

/** The first of each title. */
function asidesOf(cells: readonly Cell[]): ProseCell[] {
  const asides = cells.filter((cell): cell is ProseCell => cell.kind === 'prose' && cell.aside !== undefined)
  return asides.filter((cell, index) => asides.findIndex(({ aside }) => aside === cell.aside) === index)
}

const LIVE_HEADING: ProseCell = proseCell('what-if', '## What if?')

/** Of a heading that opens a section: "## Title" at the start of a cell. */
function titleOf(cell: Cell): string | null {
  if (cell.kind !== 'prose') return null
  return /^\s*##\s+([^\n]+)/.exec(cell.markdown)?.[1]?.trim() ?? null
}
