/** How units per window spread from one replication to the next, with the plan and P10. */
import type { SweepCount } from '@loopwright/study'
import type { Drawing, Mark } from '../drawing/drawing.ts'
import type { Figure, WindowWords } from '../draw/figure.ts'
import { capital, formatNumber, percent } from '../table/format.ts'
import { carriersText, niceStep, windowOf } from '../draw/window.ts'
import { type Table, tableOf } from '../table/table.ts'

/** How the chart of single windows is told. */
export interface UnitsSpreadOptions extends WindowWords {
  /** units that the level axis must reach, where several counts share it. Default: those of this count */
  readonly unitsSpan?: readonly [least: number, most: number]
  /** another count, outlined. Default: none */
  readonly ghost?: Count
}

type Count = Pick<SweepCount, 'carriers' | 'units' | 'p10' | 'meetsPlan'>

interface Bin {
  readonly from: number
  readonly to: number
  readonly windows: number
  /** all of its windows reach the plan; true without a plan */
  readonly met: boolean
}

const BINS_ABOUT = 18
/** share of the width that the words at a line may take */
const LABEL_SHARE = 0.28

/**
 * Columns: how many windows made so many units. With a plan, the columns begin at it, so that none holds windows of both kinds.
 *
 * @param count     carriers, and the units of each replication
 * @throws RangeError   if the window is not longer than 0 s
 * @example unitsSpread({ carriers: 3, units: [], p10: null, meetsPlan: null }, { windowSeconds: 3600 }).finding // => 'No window has been simulated yet.'
 */
export function unitsSpread(count: Count, options: UnitsSpreadOptions): Figure {
  const { per, plan } = windowOf(options)
  const [least, most] = options.unitsSpan ?? [leastOf(count.units), mostOf(count.units)]
  const width = Math.max(1, niceStep(Number.isFinite(most - least) ? most - least + 1 : 1, BINS_ABOUT))
  const bins = binsOf(count.units, plan, width)
  const found = finding(count, per, plan)
  const alt = `Columns of how many of ${count.units.length} simulated ${per}s made so many units. ${found}`
  const lines = plan === null ? '' : ' Dashed: the plan; a column begins there.'
  return {
    drawing: drawingOf(count, bins, { ...options, width }, per, plan),
    finding: found,
    alt,
    readLine: `Each column counts simulated ${per}s by the units they made.${lines} Left of the thin line, P10, lies one ${per} in ten.${options.ghost === undefined ? '' : ` Outlined: ${carriersText(options.ghost.carriers)}, as shares of its own ${per}s.`}`,
    table: binTable(count, bins, per, plan),
  }
}

function binsOf(units: readonly number[], plan: number | null, width: number): Bin[] {
  if (units.length === 0) return []
  const origin = originOf(plan)
  const first = Math.floor((leastOf(units) - origin) / width)
  const last = Math.floor((mostOf(units) - origin) / width)
  const counts = new Array<number>(last - first + 1).fill(0)
  for (const each of units) counts[Math.floor((each - origin) / width) - first]! += 1
  return counts.map((windows, index) => {
    const from = origin + (first + index) * width
    return { from, to: from + width, windows, met: plan === null || from >= plan }
  })
}

/** A column begins at the plan. */
const originOf = (plan: number | null): number => (plan === null ? 0 : Math.ceil(plan))
const leastOf = (units: readonly number[]): number => units.reduce((least, each) => Math.min(least, each), Number.POSITIVE_INFINITY)
const mostOf = (units: readonly number[]): number => units.reduce((most, each) => Math.max(most, each), Number.NEGATIVE_INFINITY)

function drawingOf(
  count: Count,
  bins: readonly Bin[],
  { unitsSpan, ghost, width }: UnitsSpreadOptions & { readonly width: number },
  per: string,
  plan: number | null,
): Drawing {
  const p10 = count.p10?.point ?? null
  const whole = unitsSpan === undefined ? [] : binsOf(unitsSpan, plan, width)
  const edges = [...[...bins, ...whole].flatMap(({ from, to }) => [from, to]), ...[plan, p10].filter((each) => each !== null)]
  const low = edges.length === 0 ? 0 : Math.min(...edges)
  const high = Math.max(low + 1, ...edges)
  const room = (high - low) * 0.03
  const outline = ghostMarks(ghost, plan, count.units.length, width)
  const top = Math.max(1, ...bins.map(({ windows }) => windows), ...outline.tops) * 1.06
  const planLeft = plan !== null && p10 !== null && plan < p10
  // at the left edge there is no room for words to the left
  const away = (at: number): boolean => at - low > (high - low) * LABEL_SHARE
  const met = plan === null || count.meetsPlan === null ? null : count.meetsPlan.successes
  return {
    heightPixels: 220,
    across: { from: low - room, to: high + room, title: `Units in one ${per}` },
    up: { from: 0, to: top * 1.22, title: `${capital(per)}s, of ${formatNumber(count.units.length, 0)}`, grid: true, ticks: ticksTo(top) },
    key:
      met === null
        ? []
        : [
            ...(met < count.units.length
              ? [{ text: `${formatNumber(count.units.length - met, 0)} fall short`, sample: 'area', ink: 'barPale' } as const]
              : []),
            ...(met > 0 ? [{ text: `${formatNumber(met, 0)} reach the plan`, sample: 'area', ink: 'bar' } as const] : []),
          ],
    marks: [
      ...bins.map(
        ({ from, to, windows, met: reached }): Mark => ({
          mark: 'area',
          x: [from, to],
          y: [0, windows],
          ink: reached ? 'bar' : 'barPale',
          tip: `${formatNumber(from, 0)} to ${formatNumber(to - 1, 0)} units: ${windows} of ${count.units.length}`,
        }),
      ),
      ...outline.marks,
      ...(p10 === null ? [] : lineMarks(p10, 'line', `P10 ${formatNumber(p10, 0)}`, top * 1.02, !planLeft && away(p10))),
      ...(plan === null ? [] : lineMarks(plan, 'plan', `plan ${formatNumber(plan, 0)}`, top * 1.12, planLeft && away(plan))),
    ],
  }
}

/** Whole numbers only, none above the columns. */
function ticksTo(top: number): { at: number; text: string }[] {
  const step = Math.max(1, niceStep(top, 4))
  return Array.from({ length: Math.floor(top / step) + 1 }, (_, index) => ({ at: index * step, text: formatNumber(index * step, 0) }))
}

/** The columns of another count as one stepped line, as high as with as many windows as this count has. */
function ghostMarks(
  ghost: Count | undefined,
  plan: number | null,
  windows: number,
  width: number,
): { readonly marks: Mark[]; readonly tops: number[] } {
  if (ghost === undefined || ghost.units.length === 0) return { marks: [], tops: [] }
  const bins = binsOf(ghost.units, plan, width)
  const scale = windows / ghost.units.length
  const points = [
    [bins[0]!.from, 0] as const,
    ...bins.flatMap(({ from, to, windows: each }) => [[from, each * scale] as const, [to, each * scale] as const]),
    [bins.at(-1)!.to, 0] as const,
  ]
  return { marks: [{ mark: 'path', points, ink: 'ghost' }], tops: bins.map((bin) => bin.windows * scale) }
}

/** A vertical line with its number above the columns; two lines write at two heights and to opposite sides. */
function lineMarks(at: number, ink: 'plan' | 'line', text: string, height: number, left: boolean): Mark[] {
  return [
    { mark: 'rule', x: [at, at], y: [0, height], ink },
    {
      mark: 'words',
      x: at,
      y: height,
      dx: left ? -5 : 5,
      text,
      ink: ink === 'plan' ? 'planWords' : 'words',
      align: left ? 'end' : 'start',
      rim: 'paper',
    },
  ]
}

function finding({ carriers, units, p10, meetsPlan }: Count, per: string, plan: number | null): string {
  if (units.length === 0) return `No ${per} has been simulated yet.`
  const nine =
    p10 === null
      ? ''
      : `nine of ten ${per}s make at least ${formatNumber(p10.point, 0)} ${formatNumber(p10.point, 0) === '1' ? 'unit' : 'units'}`
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
