/** Payback against the inputs that it hangs on: a line for each, and the hurdle. */
import type { Figure } from '../draw/figure.ts'
import type { Mark } from '../drawing/drawing.ts'
import { niceStep } from '../draw/window.ts'
import { formatNumber, formatShare } from '../table/format.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'

/** One input that is moved, and the payback at each of its values. */
export interface BreakEvenLine {
  /** such as "wage" */
  readonly input: string
  /** a value in words, such as "38 €/h" */
  readonly text: (value: number) => string
  readonly points: readonly {
    /** of the value now, such as 0.9 */
    readonly factor: number
    readonly value: number
    /** months; null: never */
    readonly months: number | null
  }[]
  /** value at which the payback is just the hurdle; null: none that was looked at */
  readonly breakEven: number | null
}

/** How the chart is told. */
export interface BreakEvenOptions {
  /** name of what pays back */
  readonly name: string
  readonly hurdleMonths: number
  /** payback with all inputs as they are; null: never */
  readonly months: number | null
}

const HEIGHT = 300
const DASHES: readonly (readonly number[])[] = [
  [1, 0],
  [7, 3],
  [2, 3],
]

/**
 * A line for each input: payback in months, with all other inputs as they are.
 *
 * @param lines  1 to 3, each with ascending factors, one of which is 1
 * @throws RangeError  if there are fewer or more
 * @example breakEven([{ input: 'wage', text: (value) => `${value} €/h`, points: [0.8, 1, 1.2].map((factor) => ({ factor, value: 38 * factor, months: 48 / factor })), breakEven: 76 }], { name: 'loop', hurdleMonths: 24, months: 48 }).finding // => '“loop” pays back in 48 months, later than the hurdle of 24. It would be met from a wage of 76 €/h on.'
 */
export function breakEven(lines: readonly BreakEvenLine[], options: BreakEvenOptions): Figure {
  if (lines.length === 0 || lines.length > DASHES.length) throw new RangeError(`payback is drawn against 1 to ${DASHES.length} inputs`)
  const found = finding(lines, options)
  return {
    drawing: drawingOf(lines, options),
    finding: found,
    alt: `Payback of “${options.name}” in months against ${lines.map(({ input }) => input).join(', ')}, each from ${formatShare(lines[0]!.points[0]!.factor)} to ${formatShare(lines[0]!.points.at(-1)!.factor)} of its value now. ${found}`,
    readLine:
      'A line for each input, moved alone, in per cent of its value now; a line that leaves the chart at the top pays back later, or never. Dashed across: the hurdle.',
    table: tableFor(lines),
  }
}

function finding(lines: readonly BreakEvenLine[], { name, hurdleMonths, months }: BreakEvenOptions): string {
  const pays =
    months === null
      ? `“${name}” never pays back with the inputs as they are.`
      : `“${name}” pays back in ${formatNumber(months, 0)} months, ${months <= hurdleMonths ? 'within' : 'later than'} the hurdle of ${formatNumber(hurdleMonths, 0)}.`
  const met = months !== null && months <= hurdleMonths
  const points = lines.flatMap(({ input, text, breakEven: at }) => (at === null ? [] : [{ input, value: text(at) }]))
  if (points.length === 0) return `${pays} No value of ${lines.map(({ input }) => input).join(' or ')} that was looked at changes that.`
  const said = points.map(({ input, value }) =>
    input === 'investment'
      ? `${met ? 'up to' : 'with at most'} an investment of ${value}`
      : `${met ? 'down to' : 'from'} a ${input} of ${value}${met ? '' : ' on'}`,
  )
  return `${pays} ${met ? 'It stays met' : 'It would be met'} ${said.join(', or ')}.`
}

function drawingOf(lines: readonly BreakEvenLine[], { hurdleMonths, months }: BreakEvenOptions): Figure['drawing'] {
  const top = 1.6 * Math.max(hurdleMonths, Math.min(months ?? 0, 6 * hurdleMonths))
  const step = niceStep(top, 6)
  const to = Math.ceil(top / step) * step
  const factors = lines[0]!.points.map(({ factor }) => factor)
  const [from, most] = [factors[0]!, factors.at(-1)!]
  const marks: Mark[] = [
    { mark: 'rule', x: ['from', 'to'], y: [hurdleMonths, hurdleMonths], ink: 'plan' },
    {
      mark: 'words',
      x: 'from',
      y: hurdleMonths,
      dx: 4,
      dy: -4,
      edge: 'bottom',
      text: `hurdle ${formatNumber(hurdleMonths, 0)} months`,
      ink: 'planWords',
    },
    ...lines.flatMap(({ input, text, points }, index): Mark[] => {
      const known = points.flatMap(({ factor, value, months: each }) => (each === null ? [] : [{ factor, value, months: each }]))
      const path: Mark = {
        mark: 'path',
        points: known.map((each) => [each.factor, each.months] as const),
        ink: 'line',
        dash: DASHES[index]!,
      }
      const dots = known
        .filter((each) => each.months <= to)
        .map(
          (each): Mark => ({
            mark: 'dot',
            x: each.factor,
            y: each.months,
            ink: 'hit',
            radius: 6,
            tip: `${input} ${text(each.value)}: ${formatNumber(each.months, 0)} months`,
          }),
        )
      return [path, ...dots]
    }),
    ...(months === null || months > to
      ? []
      : [{ mark: 'dot', x: 1, y: months, ink: 'chosenDot', radius: 5, tip: `as it is: ${formatNumber(months, 0)} months` } satisfies Mark]),
  ]
  return {
    heightPixels: HEIGHT,
    across: {
      from,
      to: most,
      title: 'Input, in per cent of its value now',
      ticks: [from, 0.8, 1, 1.2, most].filter((at) => at >= from && at <= most).map((at) => ({ at, text: formatShare(at) })),
    },
    up: { from: 0, to, title: 'Payback, months', grid: true },
    key: lines.map(({ input }, index) => ({ text: input, sample: 'line', ink: 'line', dash: DASHES[index]! })),
    marks,
    rightPixels: 18,
  }
}

/** One row for each step, one column for each input. */
function tableFor(lines: readonly BreakEvenLine[]): Table {
  const rows = lines.flatMap(({ input, text, points }) =>
    points.filter((_, index) => index % 4 === 0).map((point) => ({ input, shown: text(point.value), ...point })),
  )
  return tableOf<(typeof rows)[number]>({
    caption: 'Payback with one input moved',
    columns: [
      wordColumn('Input', 'input', 'what is moved', ({ input }) => input),
      {
        head: 'Of its\nvalue now',
        text: ({ factor }) => formatShare(factor),
        data: [['factor', 'share of its value now', ({ factor }) => factor]],
      },
      { head: 'Value', text: ({ shown }) => shown, data: [['value', 'in its unit', ({ value }) => value]] },
      {
        head: 'Payback,\nmonths',
        text: ({ months }) => (months === null ? 'never' : formatNumber(months, 0)),
        data: [['payback_months', 'months; empty: never', ({ months }) => months]],
      },
    ],
    rows,
    marked: ({ factor }) => factor === 1,
  })
}
