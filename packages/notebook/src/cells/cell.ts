/**
 * A part of a notebook: plain data, from which both the terminal's text and the page are made.
 * An `id` is unique within its notebook and does not depend on what stands before the cell, so that a page can be renewed part by part.
 */

import type { Table } from '@loopwright/charts/table'
import type { LiveCurve, LiveInput, LiveSource } from '../live/liveInput.ts'
import type { Figure } from './figure.ts'

/** A part of what is told: data of which terminal, page and files are made. */
export type Cell =
  | ProseCell
  | AnswerCell
  | SureCell
  | RunCell
  | SweepCell
  | TableCell
  | ChartCell
  | PlanCell
  | DataCell
  | ChoiceCell
  | CautionCell
  | FaultCell
  | LiveCell

/** What a cell is. */
export type CellKind = Cell['kind']

/** Running text, in Markdown. `##` opens a section. */
export interface ProseCell {
  readonly kind: 'prose'
  readonly id: string
  readonly markdown: string
  /** a detail that would fill the terminal. Default: false */
  readonly pageOnly?: boolean
  /** on a page the section that this heading opens is folded, and says this. Default: it stands open */
  readonly folded?: string
  /** on a page it stands with the answer, under this title. Default: where it is shown */
  readonly aside?: string
}

/** The answer to the notebook's question: sentences that stand first on the page. */
export interface AnswerCell {
  readonly kind: 'answer'
  readonly id: string
  /** at least one sentence; plain text, what is to be typed between backquotes */
  readonly sentences: readonly string[]
  /** what a terminal may show by the colour of the first sentence: the plan met (good) or missed (bad), a standstill (bad); the words say it too. Default: nothing */
  readonly tone?: 'good' | 'bad' | 'warning'
  /** the answer in a few large figures, the first one first; a page shows them, the sentences say them too. Default: none */
  readonly figures?: readonly AnswerFigure[]
  /** answers the question of the whole notebook: a page that opens with no answer opens with this one, and tells it again in its place. Default: nothing */
  readonly lead?: true
}

/** A number of the answer, or a word where it is one: what it is, and how sure it is. */
export interface AnswerFigure {
  /** such as "Units a shift" */
  readonly label: string
  /** such as "331", or "about" */
  readonly value: string
  /** such as "± 1 on average", or ''; without a full stop */
  readonly sure: string
}

/** How sure the answer is: what more replications would narrow, and what they would not. Stands under the table that the answer rests on. */
export interface SureCell {
  readonly kind: 'sure'
  readonly id: string
  /** plain text, what is to be typed between backquotes; may be empty */
  readonly sentences: readonly string[]
}

/** One run: what was simulated, and how it ended. */
export interface RunCell {
  readonly kind: 'run'
  readonly id: string
  readonly provenance: Provenance
  readonly sentence: string
}

/** A carrier sweep: what was simulated. */
export interface SweepCell {
  readonly kind: 'sweep'
  readonly id: string
  readonly provenance: Provenance
  readonly sentence: string
}

/** A table. */
export interface TableCell {
  readonly kind: 'table'
  readonly id: string
  readonly views: Views<Table>
  /** a detail that would fill the terminal. Default: false */
  readonly pageOnly?: boolean
}

/** A terminal shows its finding, and its table where that stands open. */
export interface ChartCell {
  readonly kind: 'chart'
  readonly id: string
  readonly views: Views<Figure>
  /** on a page the first of these stands beside the answer, and its numbers where it is shown. Default: the first picture before any heading does */
  readonly lead?: boolean
  /** a curve that the page draws anew beside itself where its reader changes the line. Default: none */
  readonly curve?: LiveCurve
  /** a detail that would fill the terminal. Default: false */
  readonly pageOnly?: boolean
}

/** The plan of the line, drawn to scale. */
export interface PlanCell {
  readonly kind: 'plan'
  readonly id: string
  readonly views: Views<Figure>
  /** a detail that would fill the terminal. Default: false */
  readonly pageOnly?: boolean
}

/** Numbers that neither terminal nor page shows: they go to the files of tables alone, such as the output of each replication. */
export interface DataCell {
  readonly kind: 'data'
  readonly id: string
  readonly table: Table
}

/** A control of the page: one of several views, shown together in all cells whose views name this choice. */
export interface ChoiceCell {
  readonly kind: 'choice'
  readonly id: string
  /** such as "Carriers on the loop" */
  readonly legend: string
  readonly options: readonly { readonly key: string; readonly label: string }[]
  readonly shown: string
}

/** A caution or a warning. */
export interface CautionCell {
  readonly kind: 'caution'
  readonly id: string
  readonly title: string
  readonly markdown: string
  /** `warning`: about this very result, also said in the terminal; `caution`: what always holds */
  readonly tone: 'caution' | 'warning'
  /** one sentence that stands for it on a printed first page. Default: it does not stand there */
  readonly brief?: string
  /** a warning that the terminal has been given already, with its place in the file. Default: false */
  readonly pageOnly?: boolean
}

/** A part of a notebook that failed: stands where its cells would. */
export interface FaultCell {
  readonly kind: 'fault'
  readonly id: string
  /** in the notebook, such as `study.ts:12:5` */
  readonly place: string
  /** plain text */
  readonly message: string
  /** the line of the notebook, with a caret under what is meant; '' where it is not known */
  readonly frame: string
  /** what would be right; '' where nobody knows */
  readonly fix: string
  /** it did not fail itself: it needs what failed */
  readonly waiting: boolean
}

/** What the reader of a page may change; the page then simulates the line again. */
export interface LiveCell {
  readonly kind: 'live'
  readonly id: string
  readonly source: LiveSource
  readonly inputs: readonly LiveInput[]
}

/** One content, or one for each option of a choice. */
export interface Views<T> {
  /** id of the ChoiceCell that switches them; null: there is one view only */
  readonly choice: string | null
  /** key of the view that is shown first */
  readonly shown: string
  /** at least one; keys are those of the choice's options */
  readonly of: readonly { readonly key: string; readonly content: T }[]
}

/** What somebody needs to get the same numbers again. */
export interface Provenance {
  /** path as the reader would type it */
  readonly scenarioFile: string
  /** first 12 hexadecimal digits of the SHA-256 of the complete line specification */
  readonly scenarioHash: string
  readonly seed: string
  /** per count */
  readonly replications: number
  readonly engineVersion: string
  /** not all replications were done */
  readonly partial: boolean
}

/**
 * A single content that no choice switches.
 *
 * @example oneView('all there is').of[0].content // => 'all there is'
 */
export function oneView<T>(content: T): Views<T> {
  return { choice: null, shown: '', of: [{ key: '', content }] }
}

/**
 * A table as a cell that no choice switches.
 *
 * @example tableCell('tasks', tableOf({ caption: 'Tasks', columns: [wordColumn('Task', 'task', 'its name', (name) => name)], rows: ['wiring'] })).kind // => 'table'
 */
export function tableCell(id: string, table: Table): TableCell {
  return { kind: 'table', id, views: oneView(table) }
}

/**
 * Running text as a cell; empty paragraphs are left out.
 *
 * @example proseCell('note', 'First.', '', 'Second.').markdown // => 'First.\n\nSecond.'
 */
export function proseCell(id: string, ...paragraphs: readonly string[]): ProseCell {
  return { kind: 'prose', id, markdown: paragraphs.filter((text) => text !== '').join('\n\n') }
}

/**
 * A heading that opens a section of a page; a terminal has none.
 *
 * @param folded  what the page says of the section, which is then folded; default: it stands open
 * @example sectionCell('section-stops', 'Stops').markdown // => '## Stops'
 */
export function sectionCell(id: string, title: string, folded?: string): ProseCell {
  return { ...proseCell(id, `## ${title}`), pageOnly: true, ...(folded === undefined ? {} : { folded }) }
}

/**
 * About this very result; also said in the terminal.
 *
 * @example warningCell('full', 'Too full', 'Nothing can move.').id // => 'warning-full'
 */
export function warningCell(id: string, title: string, markdown: string): CautionCell {
  return { kind: 'caution', id: `warning-${id}`, tone: 'warning', title, markdown }
}

/** The content that is shown first. */
export function shownView<T>(views: Views<T>): T {
  const view = views.of.find((each) => each.key === views.shown) ?? views.of[0]
  if (view === undefined) throw new RangeError('a cell with views needs at least one view')
  return view.content
}
