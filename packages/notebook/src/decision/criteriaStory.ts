/** The story of a matrix of criteria, as cells: must-haves, scores with their anchors, who wins, and how much that hangs on the weights. */
import { criteriaCases, criteriaWins } from '@loopwright/charts/decision'
import { formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { anchoredScore, type CriterionSection, decisionMatrix, SWING, type MatrixInput, type MatrixResult } from '@loopwright/decide'
import { listWords } from '@loopwright/line'
import { meanOf } from '@loopwright/stats'
import {
  type AnswerCell,
  type AnswerFigure,
  type CautionCell,
  type ChartCell,
  proseCell,
  type SureCell,
  type TableCell,
  tableCell,
} from '../cells/cell.ts'
import { chartCell, openChartCell } from '../cells/chartCell.ts'
import type { Tale } from '../cells/tale.ts'
import { USE } from '../sweep/cautions.ts'
import { alternativesTable, assumptionsTable, limitCautions } from './alternativeTables.ts'
import { type DecisionRuns, effortOf, overtimeOf, paybackOf } from './decisionRuns.ts'

/** The tale of a matrix of criteria, and its parts by name. */
export interface CriteriaStory extends Tale {
  readonly answer: AnswerCell
  /** alternatives whose plan lies above what they can make */
  readonly warnings: readonly CautionCell[]
  /** scores and totals */
  readonly matrix: TableCell
  /** what scores 1 and what scores 5 */
  readonly anchors: TableCell
  readonly mustHaves: TableCell | null
  /** how often each comes first where all weights are drawn anew; null: nobody is weighed */
  readonly wins: ChartCell | null
  /** who comes first with each weight changed, and each criterion left out; null: nobody is weighed */
  readonly cases: ChartCell | null
  readonly sure: SureCell
  readonly alternatives: TableCell
  readonly assumptions: TableCell
}

/** A matrix and what it was made of. */
export interface CriteriaResult {
  readonly kind: 'criteria'
  readonly input: MatrixInput
  readonly matrix: MatrixResult
  /** figure behind each computed score, by criterion and alternative; null: the team scored */
  readonly figures: readonly (readonly number[] | null)[]
}

/**
 * The matrix of a decision, with the scores that the simulation gives.
 *
 * @throws RangeError  where the file has no criteria, or a figure is missing: it is named
 * @example criteriaOf(runs).matrix.misses.at(-1) // => ['makes the plan in half of the shifts', 'fits between the columns of the hall']
 */
export function criteriaOf(runs: DecisionRuns): CriteriaResult {
  const { decision, result } = runs
  const { criteria: section, alternatives } = decision
  if (section === null) throw new RangeError(`there are no criteria in ${runs.file}: write must-haves and weights under "criteria:"`)
  const names = alternatives.map(({ name }) => name)
  const figures = section.criteria.map(({ from, name }) => (from === null ? null : figuresOf(runs, from, name)))
  const input: MatrixInput = {
    alternatives: names,
    mustHaves: section.mustHaves.map(({ name, planMetIn, met }) => ({
      name,
      met: names.map((each, index) => met?.get(each) ?? (result.comparison.lines[index]!.meetsPlan?.share ?? 0) >= planMetIn!),
    })),
    criteria: section.criteria.map(({ name, weight, one, five, scores }, at) => ({
      name,
      weight,
      scores: names.map((each, index) => scores?.get(each) ?? anchoredScore(figures[at]![index]!, one as number, five as number)),
    })),
  }
  return { kind: 'criteria', input, matrix: decisionMatrix(input, result.comparison.seed), figures }
}

/** a payback of never, in months */
const NEVER = 1e6

function figuresOf(runs: DecisionRuns, from: NonNullable<CriterionSection['from']>, criterion: string): number[] {
  const { decision, scenarios, result } = runs
  const plan = scenarios[decision.today]!.plan?.unitsPerWindow ?? null
  const months =
    from === 'payback' ? new Map(paybackOf(runs).alternatives.map(({ name, worth }) => [name, worth.paybackMonths ?? NEVER])) : null
  return decision.alternatives.map((alternative, index) => {
    const { units } = result.comparison.lines[index]!
    const known = {
      output: () => (units.length === 0 ? null : meanOf(units)),
      overtime: () => overtimeOf(units, plan, scenarios[index]!),
      handlings: () => effortOf(runs, index)?.handlings ?? null,
      floor: () => alternative.floor,
      // nothing is paid for what stands there
      payback: () => months!.get(alternative.name) ?? 0,
    }[from]()
    if (known === null) throw new RangeError(`"${criterion}" is scored from ${from}, and that of "${alternative.name}" is not known`)
    return known
  })
}

/**
 * The tale of a matrix of criteria.
 *
 * @throws RangeError  where the file has no criteria, or a figure is missing: it is named
 * @example criteriaStory(runs).question // => 'Which alternative do the criteria favour?'
 */
export function criteriaStory(runs: DecisionRuns): CriteriaStory {
  const result = criteriaOf(runs)
  const { decision } = runs
  const parts = {
    answer: {
      kind: 'answer',
      id: 'criteria-answer',
      sentences: answerSentences(result),
      figures: criteriaFigures(result),
    } satisfies AnswerCell,
    warnings: limitCautions(runs),
    matrix: tableCell('criteria-matrix', matrixTable(result)),
    anchors: tableCell('criteria-anchors', anchorTable(decision.criteria!.criteria)),
    mustHaves: result.input.mustHaves.length === 0 ? null : tableCell('criteria-must-haves', mustTable(result)),
    ...robustness(result),
    sure: { kind: 'sure', id: 'criteria-sure', sentences: sureSentences(result) } satisfies SureCell,
    alternatives: tableCell('criteria-alternatives', alternativesTable(runs)),
    assumptions: { ...tableCell('criteria-assumptions', assumptionsTable(runs)), pageOnly: true },
  }
  const { answer, matrix, anchors, mustHaves, wins, cases, sure, alternatives, assumptions } = parts
  return {
    ...parts,
    question: 'Which alternative do the criteria favour?',
    cells: [
      answer,
      ...parts.warnings,
      ...(mustHaves === null ? [] : [mustHaves]),
      matrix,
      ...(wins === null ? [] : [wins]),
      ...(cases === null ? [] : [cases]),
      sure,
      anchors,
      alternatives,
      assumptions,
      { ...proseCell('section-cautions', '## Cautions'), pageOnly: true },
      USE,
    ],
  }
}

/** How much the first place hangs on the weights, drawn. */
function robustness({ input: { alternatives }, matrix }: CriteriaResult): Pick<CriteriaStory, 'wins' | 'cases'> {
  if (matrix.winners.length === 0) return { wins: null, cases: null }
  const names = (winners: readonly number[]): string[] => winners.map((index) => alternatives[index]!)
  const wins = criteriaWins(
    alternatives.map((name, index) => ({
      name,
      misses: matrix.misses[index]!,
      total: matrix.totals[index]!,
      wins: matrix.winShares[index]!,
      first: matrix.winners.includes(index),
    })),
    { swing: SWING, draws: matrix.draws, ties: matrix.tieShare },
  )
  const cases = criteriaCases(
    matrix.cases.map(({ criterion, change, winners }) => ({ criterion, change, winners: names(winners) })),
    { agreed: names(matrix.winners), by: formatShare(SWING) },
  )
  return { wins: { ...chartCell('criteria-wins', wins), pageOnly: true }, cases: openChartCell('criteria-weights', cases) }
}

const quoted = (name: string): string => `“${name}”`

/** The first and the next by points, and how often the first stays first. */
function criteriaFigures({ input: { alternatives }, matrix: { winners, totals, misses, winShares } }: CriteriaResult): AnswerFigure[] {
  if (winners.length !== 1) return []
  const first = winners[0]!
  const next = [...alternatives.keys()]
    .filter((index) => index !== first && misses[index]!.length === 0)
    .toSorted((a, b) => totals[b]! - totals[a]!)[0]
  const points = (index: number): string => `${formatNumber(totals[index]!, 2)} of 5`
  return [
    { label: 'Comes first', value: alternatives[first]!, sure: points(first) },
    ...(next === undefined ? [] : [{ label: 'Then', value: alternatives[next]!, sure: points(next) }]),
    { label: 'Stays first', value: formatShare(winShares[first]!), sure: `of draws, weights within ± ${formatShare(SWING)}` },
  ]
}

function answerSentences({
  input: { alternatives },
  matrix: { winners, totals, misses, winShares, tieShare, draws, cases },
}: CriteriaResult): string[] {
  const name = (index: number): string => quoted(alternatives[index]!)
  const out = [...alternatives.keys()].filter((index) => misses[index]!.length > 0)
  const outs = out.map((index) => `${name(index)} is out: it misses ${listWords(misses[index]!.map((each) => `“${each}”`))}.`)
  if (winners.length === 0) return ['Every alternative misses a must-have: nothing is weighed.', ...outs]
  const total = formatNumber(totals[winners[0]!]!, 2)
  const first =
    winners.length === 1
      ? `${name(winners[0]!)} comes first with ${total} of 5.`
      : `${listWords(winners.map(name))} tie at ${total} of 5: nobody scores finer than that, and the matrix does not decide between them.`
  const [most, ...others] = [...alternatives.keys()]
    .filter((index) => misses[index]!.length === 0)
    .toSorted((a, b) => winShares[b]! - winShares[a]!)
  const share = (index: number): string => `${name(index)} in ${formatShare(winShares[index]!)}`
  const rest = others.filter((index) => winShares[index]! > 0)
  const beside = rest.length === 0 ? 'no other in any' : listWords(rest.map(share))
  const lost = cases.filter((one) => one.winners.length !== winners.length || one.winners.some((each) => !winners.includes(each)))
  return [
    first,
    `With all weights drawn anywhere within ± ${formatShare(SWING)} of their own, ${name(most!)} comes first in ${formatShare(winShares[most!]!)} of ${formatNumber(draws, 0)} draws, ${beside}${tieShare > 0 ? `; ${formatShare(tieShare)} of them are ties, which count for all who are in them` : ''}.`,
    lost.length === 0
      ? `No single weight ${formatShare(SWING)} more or less, and no criterion left out, changes who comes first.`
      : `Who comes first changes with ${listWords(lost.map(({ criterion, change }) => `“${criterion}” ${change === 'left out' ? change : `${formatShare(SWING)} ${change}`}`))}.`,
    ...outs,
  ]
}

interface Row {
  readonly name: string
  readonly weight: number | null
  readonly scores: readonly number[]
  readonly computed: boolean
}

function matrixTable({ input: { alternatives, criteria }, matrix: { totals, winners, misses }, figures }: CriteriaResult): Table {
  const rows: Row[] = [
    ...criteria.map(({ name, weight, scores }, at) => ({ name, weight, scores, computed: figures[at] !== null })),
    { name: 'Total', weight: null, scores: totals, computed: true },
  ]
  return tableOf<Row>({
    caption: 'Scores from 1 to 5, and their weighted mean',
    columns: [
      wordColumn('Criterion', 'criterion', 'its name; last the weighted mean', ({ name }) => name),
      {
        head: 'Weight,\n%',
        text: ({ weight }) => (weight === null ? '100' : formatNumber(weight, 0)),
        data: [['weight', 'per cent; empty: the total', ({ weight }) => weight]],
      },
      ...alternatives.map((name, index) => ({
        head: misses[index]!.length > 0 ? `${name}\n(out)` : name,
        text: ({ scores, computed }: Row): string => formatNumber(scores[index]!, computed ? 2 : 0),
        data: [[`score_${index + 1}`, `score of ${name}, 1 … 5`, ({ scores }: Row): number => scores[index]!] as const],
      })),
    ],
    rows,
    marked: ({ weight }) => weight === null,
    note: `Two decimals: computed from simulated shifts or from the file; whole numbers: the team’s. ${winners.length > 1 ? 'A tie: totals within 0.05.' : 'Totals within 0.05 of each other would be a tie.'}`,
  })
}

function anchorTable(criteria: readonly CriterionSection[]): Table {
  return tableOf<CriterionSection>({
    caption: 'What scores 1 and what scores 5',
    columns: [
      wordColumn('Criterion', 'criterion', 'its name', ({ name }) => name),
      wordColumn('1', 'one', 'what scores 1', ({ one }) => `${one}`),
      wordColumn('5', 'five', 'what scores 5', ({ five }) => `${five}`),
      wordColumn('Scored by', 'by', 'figure, or the team', ({ from }) => WORDS[from ?? 'team']),
    ],
    rows: criteria,
    note: 'Between the anchors in a straight line; beyond one the score is that of the anchor.',
  })
}

const WORDS = {
  output: 'simulation: units a shift',
  overtime: 'simulation: minutes of overtime a shift',
  handlings: 'simulation: pushes of one person a shift',
  floor: 'file: square metres',
  payback: 'simulation and file: months of payback',
  team: 'the team',
} as const

function mustTable({ input: { alternatives, mustHaves } }: CriteriaResult): Table {
  return tableOf<MatrixInput['mustHaves'][number]>({
    caption: 'Must-haves',
    columns: [
      wordColumn('Must have', 'must_have', 'what an alternative must have', ({ name }) => name),
      ...alternatives.map((name, index) =>
        wordColumn<MatrixInput['mustHaves'][number]>(name, `has_${index + 1}`, `whether ${name} has it`, ({ met }) =>
          met[index] ? 'yes' : 'no',
        ),
      ),
    ],
    rows: mustHaves,
  })
}

function sureSentences({ figures }: CriteriaResult): string[] {
  const own = figures.filter((each) => each !== null).length
  const by =
    own === figures.length
      ? 'All criteria are scored by figures; the weights are the team’s opinion.'
      : own === 0
        ? 'All scores and weights are the team’s opinion.'
        : `${formatNumber(own, 0)} of ${formatNumber(figures.length, 0)} criteria ${own === 1 ? 'is' : 'are'} scored by figures; the other scores and all weights are the team’s opinion.`
  return [`${by} More simulation makes figures surer, not opinions.`]
}
