/**
 * A part of a notebook: plain data, from which both the terminal's text and the page are made.
 * An `id` is unique within its notebook and does not depend on what stands before the cell, so that a page can be renewed part by part.
 */

import type { Table } from '@loopwright/charts'
import type { Figure } from './figure.ts'

export type Cell = ProseCell | AnswerCell | RunCell | SweepCell | TableCell | ChartCell | PlanCell | ChoiceCell | CautionCell

export type CellKind = Cell['kind']

/** Running text, in Markdown. `##` opens a section. */
export interface ProseCell {
  readonly kind: 'prose'
  readonly id: string
  readonly markdown: string
}

/** The answer to the notebook's question: sentences that stand first on the page. */
export interface AnswerCell {
  readonly kind: 'answer'
  readonly id: string
  /** at least one sentence; plain text */
  readonly sentences: readonly string[]
  /** how sure: what more replications would narrow, and what they would not */
  readonly sure: readonly string[]
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

export interface TableCell {
  readonly kind: 'table'
  readonly id: string
  readonly views: Views<Table>
  /** `page`: it would fill the terminal; `terminal`: on the page a figure shows the same numbers */
  readonly where: 'both' | 'page' | 'terminal'
}

export interface ChartCell {
  readonly kind: 'chart'
  readonly id: string
  readonly views: Views<Figure>
}

/** The plan of the loop, drawn to scale. */
export interface PlanCell {
  readonly kind: 'plan'
  readonly id: string
  readonly views: Views<Figure>
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

export interface CautionCell {
  readonly kind: 'caution'
  readonly id: string
  readonly title: string
  readonly markdown: string
  /** `warning`: about this very result, also said in the terminal; `caution`: what always holds */
  readonly tone: 'caution' | 'warning'
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

/** A single content that no choice switches. */
export function oneView<T>(content: T): Views<T> {
  return { choice: null, shown: '', of: [{ key: '', content }] }
}

/** The content that is shown first. */
export function shownView<T>(views: Views<T>): T {
  const view = views.of.find((each) => each.key === views.shown) ?? views.of[0]
  if (view === undefined) throw new RangeError('a cell with views needs at least one view')
  return view.content
}
