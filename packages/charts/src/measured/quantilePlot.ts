/** Measured times against those that a curve expects, rank by rank (Q–Q plot). */
import type { Mark } from '../drawing/drawing.ts'
import type { Figure } from '../draw/figure.ts'
import { niceStep } from '../draw/window.ts'
import { formatNumber, formatShare } from '../table/format.ts'
import { type Table, tableOf } from '../table/table.ts'

/** Times, and the curve beside them. */
export interface QuantileTimes {
  readonly name: string
  /** seconds, in any order */
  readonly values: readonly number[]
  /** seconds, of all that were taken */
  readonly mean: number
  /** time that a share u of all times stays below, by the curve */
  readonly quantile: (u: number) => number
  readonly curve: string
}

interface Pair {
  readonly rank: number
  readonly measured: number
  readonly expected: number
}

/** of the mean; farther from the line is told */
const FAR = 0.1

/**
 * A dot for each time: across what the curve expects at its rank, up what was measured. On the line both agree.
 *
 * @throws RangeError  without a value
 * @example quantilePlot({ name: 'wire', values: [41, 38, 45], mean: 41.3, quantile: (u) => 38 + 7 * u, curve: 'even' }).table.rows.length // => 3
 */
export function quantilePlot(times: QuantileTimes): Figure {
  const pairs = pairsOf(times)
  const found = finding(times, pairs)
  return {
    drawing: drawingOf(pairs, times.curve),
    finding: found,
    alt: `Dots of ${pairs.length} measured times against those that the curve expects. ${found}`,
    readLine:
      'Each dot is a measured time; on the line it is as long as the curve expects of its rank. Dots that leave the line at the top are a longer tail than the curve has.',
    table: pairTable(times, pairs),
  }
}

function pairsOf({ values, quantile }: QuantileTimes): Pair[] {
  if (values.length === 0) throw new RangeError('there is no time to show')
  return values
    .toSorted((a, b) => a - b)
    .map((measured, index) => ({ rank: index + 1, measured, expected: quantile((index + 0.5) / values.length) }))
}

function drawingOf(pairs: readonly Pair[], curve: string): Figure['drawing'] {
  const all = pairs.flatMap(({ measured, expected }) => [measured, expected])
  const [least, most] = [Math.min(...all), Math.max(...all)]
  const room = Math.max(0.5, (most - least) * 0.05)
  const [from, to] = [least - room, most + room]
  const step = niceStep(to - from, 8)
  const first = Math.ceil(from / step)
  const ticks = Array.from({ length: Math.floor(to / step) - first + 1 }, (_, index) => {
    const at = (first + index) * step
    return { at, text: formatNumber(at, step < 1 ? 1 : 0) }
  })
  return {
    heightPixels: 220,
    across: { from, to, title: `Expected by the curve (${curve}), s`, ticks },
    up: { from, to, title: 'Measured, s', grid: true, cut: true, ticks },
    marks: [
      { mark: 'rule', x: [from, to], y: [from, to], ink: 'thin' },
      ...pairs.map(
        ({ rank, measured, expected }): Mark => ({
          mark: 'dot',
          x: expected,
          y: measured,
          ink: 'dot',
          radius: 3,
          tip: `${rank} of ${pairs.length}: ${formatNumber(measured, 1)} s measured, ${formatNumber(expected, 1)} s expected`,
        }),
      ),
    ],
  }
}

function finding({ name, mean }: QuantileTimes, pairs: readonly Pair[]): string {
  const worst = pairs.reduce((far, one) => (Math.abs(one.measured - one.expected) > Math.abs(far.measured - far.expected) ? one : far))
  const by = worst.measured - worst.expected
  if (Math.abs(by) <= FAR * mean) return `${name}: no time is more than ${formatShare(FAR)} of the mean from where the curve expects it.`
  const where =
    worst.rank > 0.9 * pairs.length ? 'among the longest' : worst.rank < 0.1 * pairs.length ? 'among the shortest' : 'in the middle'
  return `${name}: farthest from the curve is a time of ${formatNumber(worst.measured, 1)} s, ${where}; the curve expects ${formatNumber(worst.expected, 1)} s there.`
}

function pairTable({ name, curve }: QuantileTimes, pairs: readonly Pair[]): Table {
  return tableOf<Pair>({
    caption: `Times of ${name} against the curve (${curve})`,
    columns: [
      { head: 'Rank', text: ({ rank }) => String(rank), data: [['rank', 'place among the times, the shortest first', ({ rank }) => rank]] },
      {
        head: 'Measured, s',
        text: ({ measured }) => formatNumber(measured, 1),
        data: [['measured_s', 'seconds, as measured', ({ measured }) => measured]],
      },
      {
        head: 'Expected, s',
        text: ({ expected }) => formatNumber(expected, 1),
        data: [['expected_s', 'seconds, by the curve', ({ expected }) => expected]],
      },
    ],
    rows: pairs,
  })
}
