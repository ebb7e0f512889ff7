/** The numbers of a carrier sweep, count by count. */
import type { SweepCount, SweepResult } from '@loopwright/study'
import { capital, formatNumber, formatWithHalfWidth, percent } from '../table/format.ts'
import { type ColumnOf, type Table, tableOf } from '../table/table.ts'
import { meanFields } from '../table/tableFields.ts'
import type { ThroughputGhost } from './throughputGhost.ts'

const NONE = '–'

/**
 * One row for each count; the chosen one is marked. A terminal shows the first columns, a page all.
 *
 * @param per    what one window is called, a noun whose plural ends in s
 * @param named  the count of the marked row; null: none
 * @param ghost  another curve, whose means stand beside these; default: none
 */
export function throughputTable(
  { counts, chance, plan, law, lawSeconds }: SweepResult,
  per: string,
  named: number | null,
  ghost?: ThroughputGhost,
): Table {
  const fixed = !chance || counts.every(({ mean, gridlocks }) => gridlocks === 0 && mean?.halfWidth === 0)
  const level = counts.find(({ mean }) => mean !== null)?.mean?.level ?? 0.95
  const whole = (value: number | null | undefined) => (value === null || value === undefined ? NONE : formatNumber(value, 0))
  const minutes = (seconds: number | null) => (seconds === null ? NONE : formatNumber(seconds / 60, 1))
  const quantile = (name: 'p10' | 'p50' | 'p90', says: string): ColumnOf<SweepCount> => ({
    head: name.toUpperCase(),
    text: (count) => (count.gridlocks > 0 ? NONE : whole(count[name]?.point)),
    data: [[name, says, (count) => count[name]?.point ?? null]],
  })
  return tableOf<SweepCount>({
    caption: `Output by number of carriers${plan === null ? '' : `; plan ${formatNumber(plan, 0)} units per ${per}`}`,
    columns: [
      {
        head: 'Carriers',
        text: ({ carriers }) => String(carriers),
        data: [['carriers', 'number of carriers', ({ carriers }) => carriers]],
      },
      {
        head: `${capital(per)}s\nrun`,
        text: ({ replications }) => formatNumber(replications, 0),
        data: [['replications', `simulated ${per}s`, ({ replications }) => replications]],
      },
      {
        head: fixed ? `Units per\n${per}` : `Units per ${per},\nmean ± ${formatNumber(level * 100, 0)} %`,
        text: meanText,
        data: [
          ...meanFields<SweepCount>('units', `units per ${per}`, ({ mean }) => mean),
          ['gridlocks', 'runs that ended in gridlock', ({ gridlocks }) => gridlocks],
          ['units_sd', `standard deviation of the units of single ${per}s`, ({ mean }) => mean?.sd ?? null],
        ],
      },
      ...(ghost === undefined ? [] : [ghostColumn(ghost, per)]),
      ...(fixed
        ? []
        : [
            quantile('p10', `units that nine of ten ${per}s reach`),
            quantile('p50', `units that half of the ${per}s reach`),
            quantile('p90', `units that one of ten ${per}s reaches`),
          ]),
      ...(plan === null ? [] : [planColumn(per, chance)]),
      ...(law === null
        ? []
        : [
            {
              head: 'Limited by\n(law)',
              align: 'left',
              text: (count: SweepCount) => count.law?.regime.replace('-limited', '') ?? NONE,
              data: [['law_regime', 'what limits the rate by the law of the loop', (count: SweepCount) => count.law?.regime ?? null]],
            } satisfies ColumnOf<SweepCount>,
            {
              head: `Law, ${law.exact ? 'exact' : 'estimate'},\nunits`,
              pageOnly: true,
              text: (count: SweepCount) => (count.law === null ? NONE : whole(count.law.rate * lawSeconds)),
              data: [
                [
                  'law_units',
                  `units per ${per} by the law`,
                  (count: SweepCount) => (count.law === null ? null : count.law.rate * lawSeconds),
                ],
                ['law_exact', 'the law is exact for this line, not an estimate', (count: SweepCount) => count.law?.exact ?? null],
              ],
            } satisfies ColumnOf<SweepCount>,
          ]),
      ...(!fixed
        ? [
            {
              head: `Single ${per},\n95 of 100`,
              pageOnly: true,
              text: (count: SweepCount) =>
                singleOf(count) === null ? NONE : `${whole(singleOf(count)!.low)} to ${whole(singleOf(count)!.high)}`,
              data: [
                ['single_low', `lower limit for one further ${per}, units, 95 of 100`, (count) => singleOf(count)?.low ?? null],
                ['single_high', `upper limit for one further ${per}, units, 95 of 100`, (count) => singleOf(count)?.high ?? null],
              ],
            } satisfies ColumnOf<SweepCount>,
          ]
        : []),
      {
        head: 'Lap of a\ncarrier, min',
        pageOnly: true,
        text: ({ lapSecondsMean }) => minutes(lapSecondsMean),
        data: [['lap_s', 'mean lap of a carrier, seconds', ({ lapSecondsMean }) => lapSecondsMean]],
      },
      {
        head: 'Time in\nline, min',
        pageOnly: true,
        text: ({ timeInLineSecondsMean }) => minutes(timeInLineSecondsMean),
        data: [
          ['time_in_line_s', 'mean time of a product from load to unload, seconds', ({ timeInLineSecondsMean }) => timeInLineSecondsMean],
        ],
      },
      {
        head: 'Products\nin line',
        pageOnly: true,
        text: ({ productsInLineMean }) => (productsInLineMean === null ? NONE : formatNumber(productsInLineMean, 1)),
        data: [['products_in_line', 'mean number of products in the line', ({ productsInLineMean }) => productsInLineMean]],
      },
    ],
    rows: counts,
    marked: ({ carriers }) => carriers === named,
    tone: ({ gridlocks, planVerdict }) => (gridlocks > 0 ? 'bad' : planVerdict?.verdict === 'met' ? 'good' : undefined),
    note: `${fixed ? `Every simulated ${per} makes the same.` : `P10: nine of ten ${per}s are better. P90: one of ten is better.`}${law === null ? '' : ' Law: what mean times alone say of carriers, slowest station and free zones; it knows no stops, no chance, no shared operators, arrivals, receivers or lists that end.'}`,
  })
}

function planColumn(per: string, chance: boolean): ColumnOf<SweepCount> {
  return {
    head: chance ? 'Plan\nmet in' : 'Plan\nmet',
    text: ({ meetsPlan }) => (meetsPlan === null ? NONE : chance ? `${percent(meetsPlan.share)} %` : meetsPlan.share === 1 ? 'yes' : 'no'),
    data: [
      ['plan_met', `share of simulated ${per}s, 0 … 1, that met the plan`, ({ meetsPlan }) => meetsPlan?.share ?? null],
      ['plan_met_low', 'lower limit of the chance of meeting the plan', ({ meetsPlan }) => meetsPlan?.low ?? null],
      ['plan_met_high', 'upper limit of the chance of meeting the plan', ({ meetsPlan }) => meetsPlan?.high ?? null],
    ],
  }
}

function ghostColumn({ called, counts }: ThroughputGhost, per: string): ColumnOf<SweepCount> {
  const unitsOf = ({ carriers }: SweepCount): number | null => counts.find((count) => count.carriers === carriers)?.units ?? null
  return {
    head: `Mean\n${called}`,
    text: (count) => (unitsOf(count) === null ? NONE : formatNumber(unitsOf(count)!, 0)),
    data: [['units_before', `mean units per ${per} ${called}`, unitsOf]],
  }
}

/** Nothing makes less than nothing; runs that stood still and runs that did not have no limits in common. */
function singleOf({ singleShift, gridlocks }: SweepCount): { readonly low: number; readonly high: number } | null {
  return singleShift === null || gridlocks > 0 ? null : { low: Math.max(0, singleShift.low), high: singleShift.high }
}

/** A count of which some runs stood still has no mean of both kinds of runs. */
function meanText({ mean, units, gridlocks, replications }: SweepCount): string {
  if (gridlocks > 0) return `${gridlocks === replications ? 'all' : `${gridlocks} of ${replications}`} stood still`
  if (mean === null) return units.length === 0 ? NONE : formatNumber(units[0]!, 0)
  return formatWithHalfWidth(mean.mean, mean.halfWidth)
}
