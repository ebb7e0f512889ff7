/** Measured times in the order in which they were taken: drift, people, and times far out. */
import type { Mark, Shape } from '../drawing/drawing.ts'
import type { Figure } from '../draw/figure.ts'
import { niceStep } from '../draw/window.ts'
import { formatNumber } from '../table/format.ts'
import { namesText } from '../table/namesText.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'

/** Times in their order. */
export interface RunTimes {
  readonly name: string
  readonly times: readonly RunTime[]
  /** seconds, of all that were taken */
  readonly mean: number
  /** beyond these a time is marked; null: too few times to say */
  readonly fences: readonly [low: number, high: number] | null
  /** of a straight line through them, s from one time to the next; null: none is drawn */
  readonly slope: number | null
}

/** One measured time. */
export interface RunTime {
  readonly seconds: number
  /** '': not named */
  readonly operator: string
  /** of the table, from 1 */
  readonly line: number
}

/** times far from the others that are named */
const NAMED_MAX = 6

const SHAPES: readonly Shape[] = ['circle', 'square', 'diamond', 'up', 'down', 'right', 'left']

/**
 * A dot for each time from left to right, a shape for each person; those beyond the fences are open.
 *
 * @throws RangeError  without a value
 * @example runChart({ name: 'wire', times: [{ seconds: 41, operator: '', line: 2 }], mean: 41, fences: null, slope: null }).table.rows.length // => 1
 */
export function runChart(run: RunTimes): Figure {
  if (run.times.length === 0) throw new RangeError('there is no time to show')
  const people = [...new Set(run.times.map(({ operator }) => operator))].filter((name) => name !== '')
  const found = finding(run)
  return {
    drawing: drawingOf(run, people),
    finding: found,
    alt: `Dots of ${run.times.length} times in the order in which they were taken. ${found}`,
    readLine: `Each dot is a measured time, the first one left. The dashed line is the mean${run.slope === null ? '' : ', the thin one a straight line through the times'}.${people.length > 1 ? ' Each shape is a person.' : ''}${run.fences === null ? '' : ' Open dots lie far from the others.'}`,
    table: runTable(run),
  }
}

const far = ({ fences }: RunTimes, { seconds }: RunTime): boolean => fences !== null && (seconds < fences[0] || seconds > fences[1])

function drawingOf(run: RunTimes, people: readonly string[]): Figure['drawing'] {
  const { times, mean, slope } = run
  const values = times.map(({ seconds }) => seconds)
  const n = times.length
  const [least, most] = [Math.min(...values), Math.max(...values)]
  const room = Math.max(0.5, (most - least) * 0.08)
  const step = Math.max(1, niceStep(n, 8))
  const shape = (operator: string): Shape => SHAPES[Math.max(0, people.indexOf(operator)) % SHAPES.length]!
  const line = (index: number): number => mean + (slope ?? 0) * (index - (n - 1) / 2)
  return {
    heightPixels: 200,
    across: {
      from: 0,
      to: n + 1,
      title: 'Times in the order in which they were taken',
      ticks: Array.from({ length: Math.floor(n / step) }, (_, index) => ({ at: (index + 1) * step, text: String((index + 1) * step) })),
    },
    up: { from: least - room, to: most + room, title: 'Seconds', grid: true, cut: true },
    key: people.length < 2 ? [] : people.slice(0, 7).map((text) => ({ text, sample: 'dot', ink: 'dot', shape: shape(text) })),
    marks: [
      { mark: 'rule', x: ['from', 'to'], y: [mean, mean], ink: 'plan' },
      ...(slope === null ? [] : [{ mark: 'rule', x: [1, n], y: [line(0), line(n - 1)], ink: 'line' } satisfies Mark]),
      ...times.map(
        (time, index): Mark => ({
          mark: 'dot',
          x: index + 1,
          y: time.seconds,
          ink: far(run, time) ? 'openDot' : 'dot',
          shape: shape(time.operator),
          radius: 3.5,
          tip: `${index + 1} of ${n}: ${formatNumber(time.seconds, 1)} s${time.operator === '' ? '' : `, ${time.operator}`}, line ${time.line}`,
        }),
      ),
    ],
  }
}

function finding(run: RunTimes): string {
  const { name, times, slope } = run
  const out = times.filter((time) => far(run, time))
  const change = (slope ?? 0) * (times.length - 1)
  const drift =
    slope === null
      ? 'no drift shows in them'
      : `from the first to the last they ${change < 0 ? 'fall' : 'rise'} by ${formatNumber(Math.abs(change), 1)} s`
  const lines = out.map(({ line }) => String(line))
  const some = out.length === 0 ? '' : `; far from the others: line${out.length === 1 ? '' : 's'} ${namesText(lines, NAMED_MAX)}`
  return `${name}, ${times.length} times in their order: ${drift}${some}.`
}

function runTable(run: RunTimes): Table {
  return tableOf<RunTime>({
    caption: `Times of ${run.name} in the order in which they were taken`,
    columns: [
      { head: 'No.', text: (_, index) => String(index + 1), data: [['number', 'place in the order, from 1', (_, index) => index + 1]] },
      { head: 'Seconds', text: ({ seconds }) => formatNumber(seconds, 1), data: [['time_s', 'seconds', ({ seconds }) => seconds]] },
      wordColumn('Operator', 'operator', 'who was timed; empty: not named', ({ operator }) => operator),
      { head: 'Line', text: ({ line }) => String(line), data: [['line', 'line or row of the table', ({ line }) => line]] },
      wordColumn('Far out', 'far_out', 'beyond the fences', (time) => (far(run, time) ? 'yes' : '')),
    ],
    rows: run.times,
  })
}
