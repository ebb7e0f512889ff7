/** The story of orders, as cells: which products how often, with which options, and the heaviest stretches. Nothing is run. */
import { formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { instantText, type MixShare, type MixStudy, type OptionShare, type OrderTable, type WorstStretch } from '@loopwright/measure'
import {
  type AnswerCell,
  type AnswerFigure,
  type CautionCell,
  type Cell,
  type ProseCell,
  proseCell,
  type SureCell,
  type TableCell,
  tableCell,
} from '../cells/cell.ts'
import type { Tale } from '../cells/tale.ts'
import { USE } from '../sweep/cautions.ts'
import { readCell, readWarnings, refusedCells } from '../times/accountCells.ts'
import { counted } from '../words/countedWords.ts'

/** The tale of orders, and its parts by name. */
export interface MixStory extends Tale {
  readonly answer: AnswerCell
  readonly warnings: readonly CautionCell[]
  readonly products: TableCell
  /** null: none is ordered */
  readonly options: TableCell | null
  readonly variants: TableCell | null
  readonly levelled: ProseCell
  /** null: the orders have no days */
  readonly worst: TableCell | null
  readonly sure: SureCell
  readonly read: ProseCell
  readonly refused: readonly TableCell[]
}

/**
 * The story's parts, by name.
 *
 * @param loads  the heaviest stretch has the most work per unit; else the most units. Default: false
 * @example mixStory([], mixStudy([{ product: 'small', options: [], units: 3, when: null, timed: false, line: 2 }])).question // => 'What is ordered, and what is the heaviest stretch of it?'
 */
export function mixStory(tables: readonly OrderTable[], study: MixStudy, loads = false): MixStory {
  const { products, options, variants, worst, levelled } = study
  const parts = {
    answer: { kind: 'answer', id: 'mix-answer', sentences: answerSentences(study, loads), figures: mixFigures(study) } satisfies AnswerCell,
    warnings: readWarnings('mix', tables),
    products: tableCell('mix-products', shareTable('Products', products)),
    options: options.length === 0 ? null : tableCell('mix-options', optionTable(options, products)),
    variants:
      options.length === 0 ? null : { ...tableCell('mix-variants', shareTable('Products with their options', variants)), pageOnly: true },
    levelled: proseCell('mix-levelled', `Levelled order of ${counted(levelled.length, 'unit')}, again and again: ${levelled.join(', ')}.`),
    worst: worst.length === 0 ? null : tableCell('mix-worst', worstTable(worst, loads)),
    sure: {
      kind: 'sure',
      id: 'mix-sure',
      sentences: [
        'Shares are those of the orders given; what will be ordered may differ. In the levelled order the product comes next that lags most behind its share (the rule of `mix: levelled`); shares that need more than a short round are met as nearly as it can (Webster).',
      ],
    } satisfies SureCell,
    read: readCell('mix', tables),
    refused: refusedCells('mix', tables),
  }
  const cells: Cell[] = [
    parts.answer,
    ...parts.warnings,
    parts.products,
    ...(parts.options === null ? [] : [parts.options]),
    ...(parts.variants === null ? [] : [parts.variants]),
    ...(parts.worst === null ? [] : [parts.worst]),
    parts.sure,
    parts.levelled,
    proseCell('section-read', '## What was read'),
    parts.read,
    ...parts.refused,
    USE,
  ]
  return { ...parts, question: 'What is ordered, and what is the heaviest stretch of it?', cells }
}

const byUnits = ({ products }: MixStudy): MixShare[] => products.toSorted((a, b) => b.units - a.units)

function mixFigures(study: MixStudy): AnswerFigure[] {
  const [first, ...others] = byUnits(study)
    .slice(0, NAMED_LARGE)
    .map(({ name, share }) => ({ label: `Share of ${name}`, value: formatShare(share), sure: 'of units' }))
  return [first!, { label: 'Units', value: formatNumber(study.units, 0), sure: 'ordered' }, ...others]
}
/** products among the large figures */
const NAMED_LARGE = 3

function answerSentences(study: MixStudy, loads: boolean): string[] {
  const { units, options, worst } = study
  const most = byUnits(study)
  const named = most.slice(0, 4).map(({ name, share }) => `${name} ${formatShare(share)}`)
  const kits = options.map(({ option, share }) => `${option} in ${formatShare(share)}`)
  const day = worst.find(({ length }) => length === 'day') ?? worst[0]
  return [
    `${counted(units, 'unit')} ordered: ${named.join(', ')}${most.length > 4 ? ` and ${most.length - 4} others` : ''}${kits.length === 0 ? '' : `; ${kits.join(', ')}`}.`,
    ...(day === undefined
      ? ['The orders have no days: no heaviest hour, day or week can be told.']
      : [
          `The heaviest ${day.length} begins ${instantText(day.start)}: ${loads ? `${formatNumber(day.load, 1)} s of work per unit` : counted(day.units, 'unit')} against ${formatNumber(day.loadMean, 1)}${loads ? ' s' : ''} in an average ${day.length}.`,
        ]),
  ]
}

function shareTable(caption: string, rows: readonly MixShare[]): Table {
  return tableOf<MixShare>({
    caption,
    columns: [
      wordColumn('Product', 'product', 'name, with options behind it', ({ name }) => name),
      { head: 'Units', text: ({ units }) => formatNumber(units, 0), data: [['units', 'units ordered', ({ units }) => units]] },
      { head: 'Share', text: ({ share }) => formatShare(share), data: [['share', 'of all units', ({ share }) => share]] },
    ],
    rows,
  })
}

function optionTable(options: readonly OptionShare[], products: readonly MixShare[]): Table {
  const rows = options.flatMap((one) => products.map(({ name }, index) => ({ ...one, product: name, of: one.byProduct[index]! })))
  return tableOf<(typeof rows)[number]>({
    caption: 'Options',
    columns: [
      wordColumn('Option', 'option', 'name of the option', ({ option }) => option),
      wordColumn('Product', 'product', 'of which product', ({ product }) => product),
      { head: 'Share', text: ({ of }) => formatShare(of), data: [['share', 'of the units of the product', ({ of }) => of]] },
    ],
    rows,
  })
}

function worstTable(worst: readonly WorstStretch[], loads: boolean): Table {
  return tableOf<WorstStretch>({
    caption: 'The heaviest hour, day and week',
    columns: [
      wordColumn('Stretch', 'length', 'hour, day or week', ({ length }) => length),
      wordColumn('Begins', 'start', 'wall clock', ({ start }) => instantText(start)),
      { head: 'Units', text: ({ units }) => formatNumber(units, 0), data: [['units', 'units ordered in it', ({ units }) => units]] },
      {
        head: loads ? 'Work per unit, s' : 'Load, units',
        text: ({ load }) => formatNumber(load, loads ? 1 : 0),
        data: [['load', loads ? 'seconds of work per unit' : 'units', ({ load }) => load]],
      },
      {
        head: 'On average',
        text: ({ loadMean }) => formatNumber(loadMean, 1),
        data: [
          ['load_mean', 'of all stretches of this length', ({ loadMean }) => loadMean],
          ['stretches', 'looked at', ({ stretches }) => stretches],
        ],
      },
    ],
    rows: worst,
    note: `Heaviest: ${loads ? 'most work per unit' : 'most units'}. With --write each is a list of its own.`,
  })
}
