/** How often each alternative comes first where all weights are drawn anew. */
import type { Mark } from '../drawing/drawing.ts'
import { barIn, dotIn, rowAxis, rowWords, STEP_PIXELS } from '../drawing/rows.ts'
import type { Figure } from '../draw/figure.ts'
import { formatNumber, formatShare } from '../table/format.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'

/** An alternative, and how it fares. */
export interface CriteriaWinner {
  readonly name: string
  /** must-haves that it misses; none: it is weighed */
  readonly misses: readonly string[]
  /** weighted mean of its scores, 1 … 5 */
  readonly total: number
  /** of the draws, 0 … 1; draws that end in a tie count for all who are in it */
  readonly wins: number
  /** it comes first with the weights as agreed */
  readonly first: boolean
}

/** How the chart is told. */
export interface CriteriaWinsOptions {
  /** each weight lies within so much of its own, a share */
  readonly swing: number
  readonly draws: number
  /** of the draws that end in a tie */
  readonly ties: number
}

/**
 * A bar for each alternative: the share of the draws in which it comes first. What misses a must-have has none.
 *
 * @param alternatives  at least one
 * @throws RangeError   if there is none
 * @example criteriaWins([{ name: 'loop', misses: [], total: 4, wins: 0.91, first: true }], { swing: 0.3, draws: 2000, ties: 0 }).finding // => '“loop” comes first in 91 % of the draws.'
 */
export function criteriaWins(alternatives: readonly CriteriaWinner[], options: CriteriaWinsOptions): Figure {
  if (alternatives.length === 0) throw new RangeError('there are no alternatives to draw')
  const { swing, draws, ties } = options
  const found = finding(alternatives)
  return {
    drawing: drawingOf(alternatives),
    finding: found,
    alt: `Bars of how often each of ${alternatives.length} alternatives comes first in ${formatNumber(draws, 0)} draws of the weights. ${found}`,
    readLine: `Each weight is drawn anywhere within ± ${formatShare(swing)} of its own, ${formatNumber(draws, 0)} times.${ties > 0 ? ` ${formatShare(ties)} of the draws end in a tie, which counts for all who are in it.` : ''} The dot marks who comes first with the weights as agreed.`,
    table: winTable(alternatives),
  }
}

const isOut = ({ misses }: CriteriaWinner): boolean => misses.length > 0
const shareText = (one: CriteriaWinner): string => (isOut(one) ? 'out' : formatShare(one.wins))

function finding(alternatives: readonly CriteriaWinner[]): string {
  const weighed = alternatives.filter((one) => !isOut(one)).toSorted((a, b) => b.wins - a.wins)
  const [first, second] = weighed
  if (first === undefined) return 'Every alternative misses a must-have: nothing is weighed.'
  const beside = second === undefined || second.wins === 0 ? '' : `, “${second.name}” in ${formatShare(second.wins)}`
  return `“${first.name}” comes first in ${formatShare(first.wins)} of the draws${beside}.`
}

function drawingOf(alternatives: readonly CriteriaWinner[]): Figure['drawing'] {
  return {
    heightPixels: STEP_PIXELS * alternatives.length,
    across: {
      from: 0,
      to: 1,
      title: 'Share of the draws in which it comes first',
      grid: true,
      ticks: [0, 0.25, 0.5, 0.75, 1].map((at) => ({ at, text: formatShare(at) })),
    },
    up: rowAxis(alternatives.length),
    marks: alternatives.flatMap((one, row): Mark[] => {
      const y = dotIn(row)
      const tip = isOut(one)
        ? `${one.name}: misses ${one.misses.join(', ')}`
        : `${one.name}: first in ${formatShare(one.wins)} of the draws`
      return [
        ...rowWords(row, one.name, shareText(one), one.first),
        ...(isOut(one) ? [] : [{ mark: 'area', x: [0, one.wins], y: barIn(row), ink: 'barPale', tip } satisfies Mark]),
        ...(one.first ? [{ mark: 'dot', x: one.wins, y, ink: 'chosenDot', radius: 5, tip } satisfies Mark] : []),
      ]
    }),
    rightPixels: 14,
  }
}

function winTable(alternatives: readonly CriteriaWinner[]): Table {
  return tableOf<CriteriaWinner>({
    caption: 'How often each comes first with other weights',
    columns: [
      wordColumn('Alternative', 'alternative', 'its name', ({ name }) => name),
      {
        head: 'Total',
        text: ({ total }) => formatNumber(total, 2),
        data: [['total', 'weighted mean of its scores, 1 … 5', ({ total }) => total]],
      },
      {
        head: 'First in',
        text: shareText,
        data: [
          ['first_share', 'share of the draws, 0 … 1, in which it comes first; empty: it is out', (one) => (isOut(one) ? null : one.wins)],
        ],
      },
      wordColumn('Misses', 'misses', 'must-haves that it misses', ({ misses }) => misses.join(', ')),
    ],
    rows: alternatives,
    marked: ({ first }) => first,
  })
}
