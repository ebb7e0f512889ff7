/** Who comes first where one weight is changed at a time: a cell for each criterion and change. */
import type { Mark } from '../drawing/drawing.ts'
import { rowAxis, rowWords, STEP_PIXELS } from '../drawing/rows.ts'
import type { Figure } from '../draw/figure.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'

/** How one weight is changed. */
export type WeightChange = 'less' | 'more' | 'left out'

/** Who comes first with one weight changed. */
export interface CriteriaCase {
  readonly criterion: string
  readonly change: WeightChange
  /** names; several: a tie; none: nobody is weighed */
  readonly winners: readonly string[]
}

/** How the chart is told. */
export interface CriteriaCasesOptions {
  /** who comes first with the weights as agreed */
  readonly agreed: readonly string[]
  /** by so much a weight is changed, in words, such as "30 %" */
  readonly by: string
}

const CHANGES: readonly WeightChange[] = ['less', 'more', 'left out']

/**
 * A row for each criterion, a cell for each change of its weight: the name of who then comes first, darker where that is another than with the weights as agreed.
 *
 * @param cases  at least one
 * @throws RangeError  if there is none
 * @example criteriaCases([{ criterion: 'floor', change: 'more', winners: ['loop'] }], { agreed: ['loop'], by: '30 %' }).finding // => 'No single change of a weight changes who comes first.'
 */
export function criteriaCases(cases: readonly CriteriaCase[], { agreed, by }: CriteriaCasesOptions): Figure {
  if (cases.length === 0) throw new RangeError('there are no changed weights to draw')
  const criteria = [...new Set(cases.map(({ criterion }) => criterion))]
  const found = finding(cases, agreed)
  return {
    drawing: drawingOf(cases, criteria, agreed, by),
    finding: found,
    alt: `A row for each of ${criteria.length} criteria, a cell for each change of its weight. ${found}`,
    readLine: `Each cell names who comes first with that one weight ${by} less, ${by} more, or the criterion left out; the other weights keep their proportions. Darker: another than with the weights as agreed. Several names: a tie.`,
    table: caseTable(cases, agreed, by),
  }
}

/** "“zoned loop”", or all that tie, as one text to compare. */
const namesOf = (winners: readonly string[]): string => (winners.length === 0 ? 'nobody' : winners.join(', '))
const changes = (one: CriteriaCase, agreed: readonly string[]): boolean => namesOf(one.winners) !== namesOf(agreed)

function finding(cases: readonly CriteriaCase[], agreed: readonly string[]): string {
  const other = cases.filter((one) => changes(one, agreed))
  if (other.length === 0) return 'No single change of a weight changes who comes first.'
  return `${other.length} of ${cases.length} single changes of a weight ${other.length === 1 ? 'changes' : 'change'} who comes first.`
}

function drawingOf(cases: readonly CriteriaCase[], criteria: readonly string[], agreed: readonly string[], by: string): Figure['drawing'] {
  const letters = [...new Set(cases.flatMap(({ winners }) => winners))].sort()
  const sign = (name: string): string => String.fromCodePoint(65 + letters.indexOf(name))
  return {
    heightPixels: STEP_PIXELS * criteria.length,
    across: {
      from: 0,
      to: CHANGES.length,
      title: '',
      above: true,
      ticks: CHANGES.map((change, index) => ({ at: index + 0.5, text: changeText(change, by) })),
    },
    up: rowAxis(criteria.length),
    key: letters.map((name) => ({ text: `${sign(name)} ${name}`, sample: 'dot', ink: 'dot', shape: 'square' })),
    marks: criteria.flatMap((criterion, row): Mark[] => [
      rowWords(row, criterion, '')[0]!,
      ...CHANGES.flatMap((change, index): Mark[] => {
        const one = cases.find((each) => each.criterion === criterion && each.change === change)
        if (one === undefined) return []
        const other = changes(one, agreed)
        return [
          {
            mark: 'area',
            x: [index + 0.02, index + 0.98],
            y: [row + 0.5, row + 0.94],
            ink: other ? 'bar' : 'barPale',
            words: [namesOf(one.winners), one.winners.map(sign).join(', ')],
            wordsInk: other ? 'on ramp 4' : 'on ramp 1',
            tip: `${criterion} ${changeText(change, by)}: ${namesOf(one.winners)}`,
          },
        ]
      }),
    ]),
    rightPixels: 14,
  }
}

const changeText = (change: WeightChange, by: string): string => (change === 'left out' ? change : `${by} ${change}`)

function caseTable(cases: readonly CriteriaCase[], agreed: readonly string[], by: string): Table {
  return tableOf<CriteriaCase>({
    caption: 'Who comes first with other weights',
    columns: [
      wordColumn('Criterion', 'criterion', 'whose weight is changed', ({ criterion }) => criterion),
      wordColumn('Weight', 'change', 'how it is changed', ({ change }) => changeText(change, by)),
      wordColumn('First', 'first', 'alternatives; several: a tie', ({ winners }) => namesOf(winners)),
    ],
    rows: cases,
    marked: (one) => changes(one, agreed),
    note: 'Marked: another than with the weights as agreed. The other weights keep their proportions.',
  })
}
