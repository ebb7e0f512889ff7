/** Tables of the page for management. */
import { formatNumber, formatShare, type Table, tableOf, type TableParts, wordColumn } from '@loopwright/charts/table'
import { STATE_TIMES } from '@loopwright/decide'
import { workingSeconds } from '@loopwright/line/bounds'
import type { Spread } from '../forecast/forecast.ts'
import { hasWeeks } from '../forecast/forecastOf.ts'
import { counted } from '../words/countedWords.ts'
import { FEW } from '../words/planWords.ts'
import type { PromiseResult, PromiseRuns } from './promiseFigures.ts'

/** Units of a stretch of time. */
export interface UnitsRow {
  readonly per: string
  readonly low: number | null
  readonly mid: number | null
  readonly high: number | null
  readonly decimals: number
}

/** P10, P50 and P90 of simulated units, times `scale`. */
export function quantilesOf(of: Spread | null, scale: number = 1): Pick<UnitsRow, 'low' | 'mid' | 'high'> {
  const at = (quantile: Spread['p10'] | undefined): number | null => (quantile == null ? null : quantile.point * scale)
  return { low: at(of?.p10), mid: at(of?.p50), high: at(of?.p90) }
}

/** Units of several stretches of time: nine of ten, half, one of ten. */
export function unitsTableOf(of: Pick<TableParts<UnitsRow>, 'rows' | 'marked' | 'note'>): Table {
  const column = (head: string, name: 'low' | 'mid' | 'high', says: string) => ({
    head,
    text: ({ decimals, ...row }: UnitsRow): string => (row[name] === null ? '–' : formatNumber(row[name], decimals)),
    data: [[name, says, (row: UnitsRow): number | null => row[name]] as const],
  })
  return tableOf<UnitsRow>({
    caption: 'Units',
    columns: [
      wordColumn('Per', 'per', 'stretch of time', ({ per }) => per),
      column('Nine of ten\nmake more', 'low', 'nine of ten make as much or more (P10)'),
      column('Half make\nmore', 'mid', 'half of them make as much or more (P50)'),
      column('One of ten\nmakes more', 'high', 'one of ten makes as much or more (P90)'),
    ],
    ...of,
  })
}

/** Units of an hour, a shift, a day and a week: nine of ten, half, one of ten. */
export function unitsTable({ forecast, section }: PromiseRuns): Table {
  const { shift, week, netSeconds } = forecast
  const days = daySums(shift.units, section.shiftsPerDay)
  const day = (p: number): number | null =>
    days.length < FEW ? null : days[Math.min(days.length - 1, Math.floor(p * (days.length - 1) + 0.5))]!
  return unitsTableOf({
    rows: [
      { per: 'net hour, mean of a shift', ...quantilesOf(shift, 3600 / netSeconds), decimals: 1 },
      { per: 'shift', ...quantilesOf(shift), decimals: 0 },
      { per: `day of ${counted(section.shiftsPerDay, 'shift')}`, low: day(0.1), mid: day(0.5), high: day(0.9), decimals: 0 },
      {
        per: `week of ${counted(forecast.shiftsPerWeek, 'shift')}`,
        ...quantilesOf(hasWeeks(forecast) ? week : null),
        decimals: 0,
      },
    ],
    marked: ({ per }) => per === 'shift',
    note: 'Days and weeks are added up from simulated shifts, each used once; chances of shifts are never multiplied.',
  })
}

/** Ascending. */
function daySums(units: readonly number[], shiftsPerDay: number): number[] {
  return Array.from({ length: Math.floor(units.length / shiftsPerDay) }, (_, day) =>
    units.slice(day * shiftsPerDay, (day + 1) * shiftsPerDay).reduce((sum, one) => sum + one, 0),
  ).sort((a, b) => a - b)
}

/** Calendar, takt, efficiency, OEE. */
export function paceTable({ scenario, section, crew }: PromiseRuns, result: PromiseResult): Table {
  const { constraint } = result
  const net = workingSeconds(scenario.line)
  const rows: (readonly [what: string, text: string, value: number | null])[] = [
    ...(scenario.calendar === null
      ? []
      : ([
          [
            'Time of a shift, breaks included, min',
            formatNumber(scenario.calendar.grossSeconds / 60, 0),
            scenario.calendar.grossSeconds / 60,
          ],
        ] as const)),
    ['Net time of a shift, min', formatNumber(net / 60, 0), net / 60],
    ...(crew === null ? [] : ([['People on a shift', formatNumber(crew, 0), crew]] as const)),
    ['Shifts a week', formatNumber(section.daysPerWeek * section.shiftsPerDay, 0), section.daysPerWeek * section.shiftsPerDay],
    ...(result.takt === null ? [] : [['Takt: net time over plan, s', formatNumber(result.takt, 1), result.takt] as const]),
    ...(result.lineEfficiency === null
      ? []
      : [
          [
            'Line efficiency: units over those of the cycle by mean times',
            formatShare(result.lineEfficiency),
            result.lineEfficiency,
          ] as const,
        ]),
    ...(result.balanceLoss === null
      ? []
      : [['Balance loss: share of the stations’ time without work', formatShare(result.balanceLoss), result.balanceLoss] as const]),
    ...(constraint === null
      ? []
      : ([
          [`OEE of ${constraint.station} (ISO 22400)`, formatShare(constraint.effectiveness.oee), constraint.effectiveness.oee],
          ['… availability, APT over PBT', formatShare(constraint.effectiveness.availability), constraint.effectiveness.availability],
          [
            '… effectiveness, PRI · PQ over APT',
            formatShare(Math.min(1, constraint.effectiveness.effectiveness)),
            constraint.effectiveness.effectiveness,
          ],
          ['… quality, GQ over PQ', formatShare(constraint.effectiveness.quality), constraint.effectiveness.quality],
          ['… starved, share of the shift', formatShare(constraint.starvedShare), constraint.starvedShare],
          ['… blocked, share of the shift', formatShare(constraint.blockedShare), constraint.blockedShare],
        ] as const)),
  ]
  return tableOf<(typeof rows)[number]>({
    caption: 'Pace and use',
    columns: [
      wordColumn('What', 'what', 'which figure', ([what]) => what),
      { head: 'Value', text: ([, text]) => text, data: [['value', 'in the unit named; shares 0 … 1', ([, , value]) => value]] },
    ],
    rows,
    note: 'OEE of a station in a line contains its neighbours: it is told for the one that limits, or that what limits is at, else for the one that works most, beside its starved and blocked shares. Quality counts rejects only where the scenario has an inspection.',
  })
}

/** How states become the times of ISO 22400. */
export function mappingTable(): Table {
  return tableOf<(typeof STATE_TIMES)[number]>({
    caption: 'How states become the times of ISO 22400',
    columns: [
      wordColumn('State here', 'state', 'of a station', ({ states }) => states),
      wordColumn(
        'Element',
        'element',
        'of ISO 22400-2:2014, as cited in a companion specification for machine tools',
        ({ element }) => element,
      ),
    ],
    rows: STATE_TIMES,
  })
}
