/** How units per window spread from one replication to the next, with the plan and P10. */
import type { SweepCount } from '@loopwright/study'
import type { ChartRow, Figure, WindowWords } from '../draw/figure.ts'
import { formatNumber, percent } from '../table/format.ts'
import { carriersText, frame, type Layer, niceStep, windowOf } from '../draw/frame.ts'
import { type Table, tableOf } from '../table/table.ts'

export interface UnitsSpreadOptions extends WindowWords {}

type Count = Pick<SweepCount, 'carriers' | 'units' | 'p10' | 'meetsPlan'>

interface Bin {
  readonly from: number
  readonly to: number
  readonly windows: number
  /** all of its windows reach the plan; true without a plan */
  readonly met: boolean
}

const BINS_ABOUT = 18

/**
 * Columns: how many windows made so many units. With a plan, the columns begin at it, so that none holds windows of both kinds.
 *
 * @param count     carriers, and the units of each replication
 * @throws RangeError   if the window is not longer than 0 s
 * @example unitsSpread({ carriers: 3, units: [], p10: null, meetsPlan: null }, { windowSeconds: 3600 }).finding // => 'No window has been simulated yet.'
 */
export function unitsSpread(count: Count, options: UnitsSpreadOptions): Figure {
  const { per, plan } = windowOf(options)
  const bins = binsOf(count.units, plan)
  const rows = bins.map(({ from, to, windows, met }): ChartRow => {
    const tip = `${formatNumber(from, 0)} to ${formatNumber(to - 1, 0)} units: ${windows} of ${count.units.length}`
    return { from, to, windows, met, tip }
  })
  const found = finding(count, per, plan)
  const alt = `Columns of how many of ${count.units.length} simulated ${per}s made so many units. ${found}`
  const lines = plan === null ? '' : ' Dashed: the plan; a column begins there.'
  return {
    spec: frame({
      description: alt,
      height: 240,
      rows,
      layer: layers(count, bins, per, plan),
    }),
    rows,
    swapRows: false,
    finding: found,
    alt,
    readLine: `Each column counts simulated ${per}s by the units they made.${lines} Left of the thin line, P10, lies one ${per} in ten.`,
    table: binTable(count, bins, per, plan),
  }
}

function binsOf(units: readonly number[], plan: number | null): Bin[] {
  if (units.length === 0) return []
  const low = units.reduce((least, each) => Math.min(least, each))
  const high = units.reduce((most, each) => Math.max(most, each))
  const width = Math.max(1, niceStep(high - low + 1, BINS_ABOUT))
  const origin = plan === null ? 0 : Math.ceil(plan)
  const first = Math.floor((low - origin) / width)
  const last = Math.floor((high - origin) / width)
  const counts = new Array<number>(last - first + 1).fill(0)
  for (const each of units) counts[Math.floor((each - origin) / width) - first]! += 1
  return counts.map((windows, index) => {
    const from = origin + (first + index) * width
    return { from, to: from + width, windows, met: plan === null || from >= plan }
  })
}

function layers(count: Count, bins: readonly Bin[], per: string, plan: number | null): Layer[] {
  const edges = bins.flatMap(({ from, to }) => [from, to])
  const marked = [plan, count.p10?.point ?? null].filter((each) => each !== null)
  const low = Math.min(...edges, ...marked)
  const high = Math.max(...edges, ...marked, low + 1)
  const room = (high - low) * 0.03
  const top = Math.max(1, ...bins.map(({ windows }) => windows)) * 1.06
  const x = {
    field: 'from',
    type: 'quantitative',
    title: `Units in one ${per}`,
    scale: { domain: [low - room, high + room] as [number, number], nice: false },
    axis: { tickCount: 6, labelOverlap: 'greedy' },
  } as const
  const y = {
    field: 'windows',
    type: 'quantitative',
    title: `${per[0]!.toUpperCase()}${per.slice(1)}s, of ${count.units.length}`,
    scale: { domain: [0, top] as [number, number], nice: false },
    axis: { tickCount: 5, format: 'd', tickMinStep: 1 },
  } as const
  const bars = ([true, false] as const).map(
    (met): Layer => ({
      transform: [{ filter: `datum.met === ${met}` }],
      mark: { type: 'bar', style: met ? 'count' : 'countPale' },
      encoding: { x, x2: { field: 'to' }, y, y2: { datum: 0 }, tooltip: { field: 'tip' } },
    }),
  )
  const p10 = count.p10?.point ?? null
  const planLeft = plan !== null && p10 !== null && plan < p10
  return [
    ...bars,
    ...(plan === null ? [] : line(plan, 'plan', `plan ${formatNumber(plan, 0)}`, -34, planLeft)),
    ...(p10 === null ? [] : line(p10, 'p10', `P10 ${formatNumber(p10, 0)}`, -18, !planLeft)),
    ...(plan === null || count.meetsPlan === null ? [] : sides(count.meetsPlan.successes, count.units.length)),
  ]
}

/** A vertical line with its number above the columns; two lines write at two heights and to opposite sides. */
function line(at: number, style: 'plan' | 'p10', text: string, y: number, left: boolean): Layer[] {
  const x = { datum: at, type: 'quantitative' } as const
  return [
    { data: { values: [{}] }, mark: { type: 'rule', style, y: y + 2, y2: 'height' }, encoding: { x } },
    {
      data: { values: [{}] },
      mark: {
        type: 'text',
        style: style === 'plan' ? 'planText' : 'words',
        align: left ? 'right' : 'left',
        baseline: 'top',
        dx: left ? -5 : 5,
        y,
        text,
      },
      encoding: { x },
    },
  ]
}

/** How many fall short and how many do not, each with the shade of its columns, in the line above the plan's. */
function sides(met: number, of: number): Layer[] {
  const below: Layer[] = [
    { data: { values: [{}] }, mark: { type: 'rect', style: 'countPale', x: 0, x2: 11, y: -54, y2: -43 }, encoding: {} },
    {
      data: { values: [{}] },
      mark: { type: 'text', style: 'words', align: 'left', baseline: 'middle', x: 16, y: -48, text: `${of - met} fall short` },
      encoding: {},
    },
  ]
  const reached: Layer[] = [
    {
      data: { values: [{}] },
      mark: { type: 'rect', style: 'count', x: 110, x2: 121, y: -54, y2: -43 },
      encoding: {},
    },
    {
      data: { values: [{}] },
      mark: {
        type: 'text',
        style: 'words',
        align: 'left',
        baseline: 'middle',
        x: 126,
        y: -48,
        text: `${met} reach the plan`,
      },
      encoding: {},
    },
  ]
  return [...(met < of ? below : []), ...(met > 0 ? reached : [])]
}

function finding({ carriers, units, p10, meetsPlan }: Count, per: string, plan: number | null): string {
  if (units.length === 0) return `No ${per} has been simulated yet.`
  const nine = p10 === null ? '' : `nine of ten ${per}s make at least ${formatNumber(p10.point, 0)} units`
  if (plan === null || meetsPlan === null)
    return nine === '' ? `One ${per} made ${formatNumber(units[0]!, 0)} units.` : `With ${carriersText(carriers)}, ${nine}.`
  const share = meetsPlan.share
  const hundred =
    share === 1
      ? `all ${meetsPlan.n} simulated ${per}s`
      : share === 0
        ? `none of ${meetsPlan.n} simulated ${per}s`
        : `${meetsPlan.successes} of ${meetsPlan.n} simulated ${per}s`
  return `With ${carriersText(carriers)} the plan of ${formatNumber(plan, 0)} is met in ${hundred}${nine === '' ? '' : `; ${nine}`}.`
}

function binTable({ carriers, units }: Count, bins: readonly Bin[], per: string, plan: number | null): Table {
  let below = 0
  const rows = bins.map((bin) => {
    const reached = (units.length - below) / units.length
    below += bin.windows
    return { ...bin, reached }
  })
  return tableOf({
    caption: `Units per ${per} with ${carriersText(carriers)}, ${units.length} simulated ${per}s`,
    columns: [
      {
        head: 'Units',
        align: 'left',
        text: ({ from, to }) => (to - from === 1 ? formatNumber(from, 0) : `${formatNumber(from, 0)}–${formatNumber(to - 1, 0)}`),
        data: [
          ['units_from', 'units, from this number on', ({ from }) => from],
          ['units_below', 'units, below this number', ({ to }) => to],
        ],
      },
      {
        head: `Simulated ${per}s`,
        text: ({ windows }) => String(windows),
        data: [['windows', `simulated ${per}s`, ({ windows }) => windows]],
      },
      {
        head: `Made so many or more (% of ${per}s)`,
        text: ({ reached }) => percent(reached),
        data: [['reached', `share of ${per}s, 0 … 1, that made units_from or more`, ({ reached }) => reached]],
      },
    ],
    rows,
    marked: ({ from, to }) => plan !== null && from <= plan && plan < to,
    note: plan === null ? null : `The marked row begins at the plan of ${formatNumber(plan, 0)}.`,
  })
}
