/** Tables that every tale of a decision has: what the alternatives make and ask of people, and what stands behind each of them. */
import { formatNumber, formatShare, formatWithHalfWidth, meanFields, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import type { Alternative } from '@loopwright/decide'
import type { ComparedLine } from '@loopwright/study/compare'
import { type CautionCell, warningCell } from '../cells/cell.ts'
import { limitsTold } from '../limits/limitWords.ts'
import { NOT_KNOWN } from '../sweep/countWords.ts'
import { type Period, period } from '../sweep/period.ts'
import { markdownOf } from '../words/markdownOf.ts'
import { type DecisionRuns, type Effort, effortOf, overtimeOf } from './decisionRuns.ts'

interface Row {
  readonly of: Alternative
  readonly made: ComparedLine
  readonly effort: Effort | null
  /** minutes */
  readonly overtime: number | null
}

/** One row for each alternative: output, overtime, handlings, walking, floor. */
export function alternativesTable(runs: DecisionRuns): Table {
  const { decision, scenarios, result } = runs
  const { one, many }: Period = period(scenarios[decision.today]!)
  const plan = scenarios[decision.today]!.plan?.unitsPerWindow ?? null
  const rows = decision.alternatives.map((of, index): Row => {
    const made = result.comparison.lines[index]!
    return {
      of,
      made,
      effort: effortOf(runs, index),
      overtime: overtimeOf(made.units, plan, scenarios[index]!),
    }
  })
  return tableOf<Row>({
    caption: `Alternatives in the same simulated ${many}, per ${one}`,
    columns: [
      wordColumn('Alternative', 'alternative', 'name of the alternative', ({ of }) => of.name),
      {
        head: `Units per\n${one}`,
        text: ({ made }) =>
          made.mean === null || made.gridlocks > 0
            ? made.gridlocks > 0
              ? 'stands still'
              : NOT_KNOWN
            : formatWithHalfWidth(made.mean.mean, made.mean.halfWidth),
        data: meanFields('units', `units per ${one}`, ({ made }) => made.mean),
      },
      {
        head: 'Plan\nmet in',
        text: ({ made }) => (made.meetsPlan === null ? NOT_KNOWN : formatShare(made.meetsPlan.share)),
        data: [['plan_met', `share of ${many}, 0 … 1, that met the plan`, ({ made }) => made.meetsPlan?.share ?? null]],
      },
      {
        head: 'Overtime,\nmin',
        text: ({ overtime }) => (overtime === null ? NOT_KNOWN : formatNumber(overtime, 1)),
        data: [['overtime_min', `mean minutes of overtime a ${one}`, ({ overtime }) => overtime]],
      },
      {
        head: 'Pushes of\none person',
        text: ({ effort }) => (effort === null ? NOT_KNOWN : formatNumber(effort.handlings, 0)),
        data: [
          ['handlings', `pushes and pulls of the person who does most, mean a ${one}`, ({ effort }) => effort?.handlings ?? null],
          ['handling_s', 'seconds of these', ({ effort }) => effort?.handlingSeconds ?? null],
        ],
      },
      {
        head: 'Walked,\nkm',
        text: ({ effort }) => (effort === null || effort.walkMetres === null ? NOT_KNOWN : formatNumber(effort.walkMetres / 1000, 1)),
        data: [
          [
            'walk_m',
            `metres that the person who walks most walks in a ${one}; empty: not known`,
            ({ effort }) => effort?.walkMetres ?? null,
          ],
        ],
      },
      {
        head: 'Floor,\nm²',
        text: ({ of }) => (of.floor === null ? NOT_KNOWN : formatNumber(of.floor, 0)),
        data: [['floor_m2', 'square metres; empty: not known', ({ of }) => of.floor]],
      },
    ],
    rows,
    marked: (_, index) => index === decision.today,
    note: `Marked: today. Means with 95 % intervals. Pushes and walking are those of the person who does most, from ${formatNumber(Math.max(0, ...result.people.map(({ watched }) => watched)), 0)} of the ${many}; walking at 1.1 m/s (common practice, no source) and the way of each push and of each task, where the file gives it.`,
  })
}

/** Alternatives whose plan lies above what they can make, by mean times alone; none where there is no such one. */
export function limitCautions({ decision, scenarios }: Pick<DecisionRuns, 'decision' | 'scenarios'>): CautionCell[] {
  const said = decision.alternatives.flatMap(({ name }, index) =>
    limitsTold(scenarios[index]!)
      .warnings.filter(({ code }) => code === 'plan above a limit')
      .map(({ text }) => `- “${name}”: ${markdownOf(text)}`),
  )
  return said.length === 0 ? [] : [warningCell('limits', 'The plan is more than these can make', said.join('\n'))]
}

/** What stands behind each alternative: where its line is written, and what the model takes for granted. */
export function assumptionsTable({ decision }: Pick<DecisionRuns, 'decision'>): Table {
  return tableOf<Alternative>({
    caption: 'What stands behind each alternative',
    columns: [
      wordColumn('Alternative', 'alternative', 'name of the alternative', ({ name }) => name),
      wordColumn('Line', 'line', 'where its line is written', ({ source }) => {
        switch (source.kind) {
          case 'scenario':
            return decision.scenario
          case 'file':
            return source.file
          case 'variation':
            return `${decision.scenario}, variation ${source.variation}`
          case 'set':
            return `${decision.scenario} with ${Object.entries(source.changes)
              .map(([path, value]) => `${path} = ${value}`)
              .join(', ')}`
        }
      }),
      wordColumn('Takes for granted', 'assumes', 'in the words of the file', ({ assumes }) => assumes ?? 'nothing is said'),
    ],
    rows: decision.alternatives,
  })
}
