/** The story of a screening, as cells: figures against published guidance, what to measure, and the caution that stands on every page of it. */
import { formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import {
  LOW_VOLTAGE,
  metresOf,
  RISK_REDUCTION,
  SCREENING_CAUTION,
  type ScreeningFinding,
  type ScreeningResult,
  STANDARDS_TO_OPEN,
  type Walked,
  type WalkPart,
} from '@loopwright/decide/screening'
import {
  type AnswerCell,
  type AnswerFigure,
  type CautionCell,
  type ProseCell,
  proseCell,
  type TableCell,
  tableCell,
} from '../cells/cell.ts'
import type { Tale } from '../cells/tale.ts'
import { NOT_KNOWN } from '../sweep/countWords.ts'
import { counted } from '../words/countedWords.ts'
import { assumptionsTable } from './alternativeTables.ts'
import { type DecisionRuns, screeningsOf } from './decisionRuns.ts'

/** The tale of a screening, and its parts by name. */
export interface ScreeningStory extends Tale {
  readonly answer: AnswerCell
  /** stands on every page of a screening, word by word */
  readonly caution: CautionCell
  /** figures of each alternative that were compared */
  readonly compared: readonly TableCell[]
  /** figures of each alternative that were not compared, and why */
  readonly notChecked: readonly TableCell[]
  /** ways of each person that were measured, where the file states some */
  readonly walking: readonly TableCell[]
  /** what each figure rests on, and what to measure */
  readonly measure: readonly TableCell[]
  readonly reduction: ProseCell
  readonly assumptions: TableCell
}

/**
 * The tale of a screening of all alternatives.
 *
 * @throws RangeError  where the file has no screening
 * @example screeningStory(runs).question // => 'What needs a closer look before it is built?'
 */
export function screeningStory(runs: DecisionRuns): ScreeningStory {
  const all = screeningsOf(runs)
  const id = (index: number): string => `screen-${index + 1}`
  const part = (
    index: number,
    ending: string,
    name: string,
    list: readonly ScreeningFinding[],
    table: (name: string, list: readonly ScreeningFinding[]) => Table,
  ): TableCell[] => (list.length === 0 ? [] : [tableCell(`${id(index)}-${ending}`, table(name, list))])
  const parts = {
    answer: {
      kind: 'answer',
      id: 'screen-answer',
      sentences: answerSentences(all),
      figures: screeningFigures(all),
    } satisfies AnswerCell,
    caution: {
      kind: 'caution',
      id: 'caution-screening',
      tone: 'warning',
      title: 'What this screening is, and what it is not',
      markdown: SCREENING_CAUTION,
    } satisfies CautionCell,
    compared: all.flatMap(({ name, result }, index) =>
      part(
        index,
        'compared',
        name,
        result.findings.filter(({ word }) => word !== 'not checked'),
        comparedTable,
      ),
    ),
    notChecked: all.flatMap(({ name, result }, index) =>
      part(
        index,
        'not-checked',
        name,
        result.findings.filter(({ word }) => word === 'not checked'),
        notCheckedTable,
      ),
    ),
    walking: all.flatMap(({ name, result: { walked } }, index) =>
      walked.length === 0 ? [] : [tableCell(`${id(index)}-walking`, walkingTable(name, walked))],
    ),
    measure: all.flatMap(({ name, result }, index) =>
      part(index, 'measure', name, result.findings, measureTable).map((cell) => ({ ...cell, pageOnly: true })),
    ),
    reduction: proseCell(
      'screen-order',
      '## In which order a risk is reduced',
      RISK_REDUCTION.map((step, index) => `${index + 1}. ${step[0]!.toUpperCase()}${step.slice(1)}.`).join('\n'),
      `The order is that of ISO 12100 (from memory). ${LOW_VOLTAGE}`,
      `Standards to open in their current edition: ${STANDARDS_TO_OPEN.join(', ')}.`,
    ),
    assumptions: { ...tableCell('screen-assumptions', assumptionsTable(runs)), pageOnly: true },
  }
  const { answer, caution, compared, notChecked, walking, measure, reduction, assumptions } = parts
  return {
    ...parts,
    question: 'What needs a closer look before it is built?',
    cells: [answer, caution, ...compared, ...notChecked, ...walking, ...measure, reduction, assumptions],
  }
}

type Named = readonly { readonly name: string; readonly result: ScreeningResult }[]

/** alternatives among the large figures */
const LARGE = 4

function screeningFigures(all: Named): AnswerFigure[] {
  return all.slice(0, LARGE).map(({ name, result: { counts } }) => ({
    label: `“${name}”`,
    value: formatNumber(counts['above guidance value']!, 0),
    sure: `above guidance value; ${formatNumber(counts['not checked']!, 0)} not checked`,
  }))
}

function answerSentences(all: Named): string[] {
  return all.map(({ name, result: { counts, findings } }) => {
    const above = [...new Set(findings.filter(({ word }) => word === 'above guidance value').map(({ what }) => what))]
    const [a, w, n] = (['above guidance value', 'within guidance value', 'not checked'] as const).map((word) => counts[word])
    const first = above.length === 0 ? '' : `: ${above.join('; ')}`
    return `“${name}”: ${counted(a!, 'figure')} above guidance value${first}. ${formatNumber(w!, 0)} within guidance value, assumptions: below; ${formatNumber(n!, 0)} not checked.`
  })
}

const DECIMALS = { N: 0, m: 3, 'm/s': 2, s: 2, kg: 1, V: 0, W: 0, A: 1, 'm/s²': 2, count: 0 } as const

/** metres; below, a length is told in millimetres */
const METRES_FROM = 20

function figureText(value: number, unit: ScreeningFinding['unit']): string {
  if (unit === 'm' && value >= METRES_FROM) return `${formatNumber(value, 0)} m`
  if (unit === 'm') return `${formatNumber(1000 * value, 0)} mm`
  if (unit === 'm/s') return `${formatNumber(60 * value, 1)} m/min`
  const small = unit === 'count' && value < 20 && !Number.isInteger(value)
  return `${formatNumber(value, small ? 1 : DECIMALS[unit])}${unit === 'count' ? '' : ` ${unit}`}`
}

const valueText = ({ value, unit }: ScreeningFinding): string => (value === null ? NOT_KNOWN : figureText(value, unit))

function guidanceText({ guidance, unit }: ScreeningFinding): string {
  if (guidance === null) return NOT_KNOWN
  const first = figureText(guidance.value, unit)
  return guidance.upTo === null ? `${guidance.side} ${first}` : `${first.split(' ')[0]} to ${figureText(guidance.upTo, unit)}`
}

const figureFields = {
  value: ['value', 'in the unit of the column unit', ({ value }: ScreeningFinding) => value] as const,
  unit: ['unit', 'N, m, m/s, s, kg, V, W, A, m/s² or count', ({ unit }: ScreeningFinding) => unit] as const,
}

function comparedTable(name: string, findings: readonly ScreeningFinding[]): Table {
  return tableOf<ScreeningFinding>({
    caption: `“${name}”: figures that were compared`,
    columns: [
      wordColumn('What', 'what', 'what the figure is of', ({ what }) => what),
      { head: 'Figure', text: valueText, data: [figureFields.value, figureFields.unit] },
      {
        head: 'Guidance',
        text: guidanceText,
        data: [
          ['guidance', 'guidance value, in the same unit', ({ guidance }) => guidance?.value ?? null],
          ['guidance_to', 'upper end of a range; empty: one value', ({ guidance }) => guidance?.upTo ?? null],
          ['side', 'at most, at least or between', ({ guidance }) => guidance?.side ?? null],
        ],
      },
      wordColumn(
        'Result',
        'result',
        'above guidance value, or within it; the assumptions stand in the table of what to measure',
        ({ word }) => (word === 'within guidance value' ? 'within guidance value, assumptions: below' : word),
      ),
      {
        head: 'Left',
        text: ({ margin }) => (margin === null ? NOT_KNOWN : `${margin < 0 ? '−' : ''}${formatShare(Math.abs(margin))}`),
        data: [['margin', 'share of the guidance value that is left; below 0: beyond it', ({ margin }) => margin]],
      },
    ],
    rows: findings,
    marked: ({ word }) => word === 'above guidance value',
    tone: ({ word }) => (word === 'above guidance value' ? 'warning' : undefined),
    note: 'Marked: above guidance value; of a least distance or gap, short of it. Assumptions, sources, editions and evidence of each figure stand on the page with what to measure.',
  })
}

function notCheckedTable(name: string, findings: readonly ScreeningFinding[]): Table {
  return tableOf<ScreeningFinding>({
    caption: `“${name}”: not checked`,
    columns: [
      wordColumn('What', 'what', 'what the figure is of', ({ what }) => what),
      { head: 'Figure', text: valueText, data: [figureFields.value, figureFields.unit] },
      wordColumn('Not checked, because', 'why', 'why nothing was compared', ({ why }) => why ?? ''),
    ],
    rows: findings,
  })
}

/** One way of a person, or all of them together. */
interface WalkRow {
  readonly person: string
  readonly of: string
  /** null: of several */
  readonly part: WalkPart | null
  readonly metres: number
}

function walkRows(one: Walked): WalkRow[] {
  const { person, parts } = one
  const rows = parts.map((part): WalkRow => ({ person, of: part.of, part, metres: part.metresEach * part.times }))
  return rows.length === 1 ? rows : [...rows, { person, of: 'all together', part: null, metres: metresOf(one) }]
}

function walkingTable(name: string, walked: readonly Walked[]): Table {
  return tableOf<WalkRow>({
    caption: `“${name}”: what people walk in a shift`,
    columns: [
      wordColumn('Person', 'person', 'named operator, or station whose own operator it is', ({ person }) => person),
      wordColumn('For', 'of', 'task, station, or what else is walked for', ({ of }) => of),
      {
        head: 'Each,\nm',
        text: ({ part }) => (part === null ? '' : formatNumber(part.metresEach, 1)),
        data: [['each_m', 'metres each time, there and back; empty: of several', ({ part }) => part?.metresEach ?? null]],
      },
      {
        head: 'Times',
        text: ({ part }) => (part === null ? '' : formatNumber(part.times, 0)),
        data: [['times', 'mean of a shift', ({ part }) => part?.times ?? null]],
      },
      { head: 'Way,\nm', text: ({ metres }) => formatNumber(metres, 0), data: [['way_m', 'metres in a shift', ({ metres }) => metres]] },
      wordColumn('Known by', 'known', 'how way and times are known', ({ part }) => part?.known ?? ''),
    ],
    rows: walked.flatMap(walkRows),
    note: 'Only what was measured or simulated: fetching, errands and ways in breaks are not in it. A way each unit is taken as the same for every unit.',
  })
}

function measureTable(name: string, findings: readonly ScreeningFinding[]): Table {
  return tableOf<ScreeningFinding>({
    caption: `“${name}”: what each figure rests on, and what to measure`,
    columns: [
      wordColumn('Topic', 'topic', 'what it is about', ({ topic }) => topic),
      wordColumn('What', 'what', 'what the figure is of', ({ what }) => what),
      wordColumn('Result', 'result', 'the only words there are', ({ word, assumptions }) =>
        word === 'within guidance value'
          ? `within guidance value, assumptions: ${assumptions.length === 0 ? 'none' : assumptions.join('; ')}`
          : word,
      ),
      wordColumn('Source, edition, evidence', 'source', 'of the guidance value', ({ guidance }) =>
        guidance === null
          ? 'none'
          : `${guidance.source}; ${guidance.edition}; ${guidance.evidence}; ${guidance.side} ${formatNumber(guidance.value, 3)}`,
      ),
      wordColumn('Assumptions', 'assumptions', 'what the figure takes for granted', ({ assumptions }) =>
        assumptions.length === 0 ? 'none' : assumptions.join('; '),
      ),
      wordColumn('To measure', 'measure', 'on the machine, or to read', ({ measure }) => measure),
    ],
    rows: findings,
  })
}
