/** Cells of the studies: the same in the terminal and on the page. */
import { createHash } from 'node:crypto'
import type { Figure, Table } from '@loopwright/charts'
import {
  type AnswerCell,
  type CautionCell,
  type Cell,
  type ChartCell,
  oneView,
  type ProseCell,
  type RunCell,
  type TableCell,
} from '@loopwright/notebook'
import { ENGINE_VERSION } from '@loopwright/study'
import type { Shown } from './cells.ts'
import type { Loaded } from './loadScenario.ts'

export interface Told {
  /** the answer, at least one sentence */
  readonly sentences: readonly string[]
  /** how sure */
  readonly sure: readonly string[]
  /** in this order, under the answer */
  readonly parts: readonly Cell[]
  /** about this very result */
  readonly warnings: readonly string[]
  /** under the parts, on the page only */
  readonly pageParts?: readonly Cell[]
}

export interface Simulated {
  readonly source: Loaded
  /** such as "12 lines simulated, 30 replications each, seed 1" */
  readonly sentence: string
  readonly seed: string
  readonly replications: number
  readonly partial: boolean
}

/** Answer first, then the parts, then how sure; on the page also what was simulated. */
export function studyShown(told: Told, simulated: Simulated): Shown {
  const answer: AnswerCell = { kind: 'answer', id: 'answer', sentences: told.sentences, sure: told.sure }
  const sure = told.sure.length === 0 ? [] : [prose('sure', told.sure)]
  const warnings = told.warnings.map((text, index) => warning(`warning-${index + 1}`, text))
  return {
    terminal: [answer, ...told.parts, ...sure, ...warnings],
    page: [simulatedCell(simulated), answer, ...warnings, ...told.parts, ...(told.pageParts ?? []), USE],
  }
}

/** Stands on every page of a study. */
export const USE: CautionCell = {
  kind: 'caution',
  id: 'caution-use',
  tone: 'caution',
  title: 'What these figures are, and what they are not',
  markdown: `Screening only: they compare lines on the inputs of the scenario, to show what is worth a closer look. They are not a risk assessment and not a
    statement of compliance. Local codes, the current edition of the standards that apply, and a qualified (where required, licensed) professional decide
    on speeds, gaps between carriers, release modes, guarding and the work of people at the line.`,
}

/** Paragraphs. */
export const prose = (id: string, paragraphs: readonly string[]): ProseCell => ({ kind: 'prose', id, markdown: paragraphs.join('\n\n') })

/** A list, one line each, under a heading line. */
export const listing = (id: string, heading: string, lines: readonly string[]): ProseCell =>
  prose(id, [heading, lines.map((line) => `- ${line}`).join('\n')])

export const tableCell = (id: string, table: Table, where: TableCell['where'] = 'both'): TableCell => ({
  kind: 'table',
  id,
  where,
  views: oneView(table),
})

/** A chart of the charts package. */
export function chartCell(id: string, { finding, spec, rows, swapRows, alt, readLine, table }: Figure): ChartCell {
  return {
    kind: 'chart',
    id,
    views: oneView({ finding, picture: { kind: 'chart', spec, rows, swapRows }, alt, howToRead: readLine, table, tableOpen: false }),
  }
}

const warning = (id: string, text: string): CautionCell => ({ kind: 'caution', id, title: 'Warning', markdown: text, tone: 'warning' })

function simulatedCell({ source, sentence, seed, replications, partial }: Simulated): RunCell {
  const scenarioHash = createHash('sha256').update(JSON.stringify(source.scenario.line)).digest('hex').slice(0, 12)
  return {
    kind: 'run',
    id: 'simulated',
    sentence,
    provenance: { scenarioFile: source.file, scenarioHash, seed, replications, engineVersion: ENGINE_VERSION, partial },
  }
}
