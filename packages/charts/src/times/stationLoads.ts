/** Work of each station as bars against the cycle that they keep. */
import type { Mark } from '../drawing/drawing.ts'
import { rowAxis, rowWords, STEP_PIXELS } from '../drawing/rows.ts'
import type { Figure } from '../draw/figure.ts'
import { niceStep } from '../draw/window.ts'
import { formatNumber, formatShare } from '../table/format.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'

/** Tasks of one station. */
export interface StationLoad {
  readonly name: string
  readonly tasks: readonly { readonly name: string; readonly seconds: number }[]
}

/**
 * A bar for each station, in parts for its tasks, with the cycle as a line.
 *
 * @param loads         in the order of flow, at least one
 * @param cycleSeconds  seconds, > 0; what no bar exceeds
 * @param text          writes seconds. Default: one decimal where there is one
 * @throws RangeError   if there is no station, or the cycle is not above 0 s
 * @example stationLoads([{ name: 'Station 1', tasks: [{ name: 'frame', seconds: 40 }] }], 50).finding // => 'Station 1 has most work, 40 s of the cycle of 50 s (80\u202f%).'
 */
export function stationLoads(loads: readonly StationLoad[], cycleSeconds: number, text: (seconds: number) => string = plain): Figure {
  const seconds = (value: number): string => `${text(value)} s`
  if (loads.length === 0 || !(cycleSeconds > 0)) throw new RangeError('bars of work need a station and a cycle above 0 s')
  const found = finding(loads, cycleSeconds, seconds)
  return {
    drawing: drawingOf(loads, cycleSeconds, seconds),
    finding: found,
    alt: `Bars of the mean work of ${loads.length === 1 ? 'one station' : `${loads.length} stations`} against the cycle of ${seconds(cycleSeconds)}. ${found}`,
    readLine: 'Bars: mean seconds of work of each station, in parts for its tasks. Dashed: the cycle; what is left of it is idle.',
    table: loadTable(loads, cycleSeconds, seconds),
  }
}

const workOf = ({ tasks }: StationLoad): number => tasks.reduce((sum, task) => sum + task.seconds, 0)
/** one decimal where there is one */
const plain = (value: number): string => formatNumber(value, 1).replace(/\.0$/, '')
type Seconds = (value: number) => string
/** a load that is the whole cycle but for rounding is all of it */
const shareOf = (load: StationLoad, cycleSeconds: number): number => Math.round((workOf(load) / cycleSeconds) * 1e9) / 1e9

function drawingOf(loads: readonly StationLoad[], cycleSeconds: number, seconds: Seconds): Figure['drawing'] {
  const most = Math.max(cycleSeconds, ...loads.map(workOf))
  const step = niceStep(most * 1.06, 6)
  return {
    heightPixels: STEP_PIXELS * loads.length,
    across: { from: 0, to: Math.ceil((most * 1.06) / step) * step, title: 'Seconds of work', grid: true },
    up: rowAxis(loads.length),
    key: [{ text: `cycle, ${seconds(cycleSeconds)}`, sample: 'line', ink: 'plan', dash: [6, 4] }],
    marks: [
      ...loads.flatMap((load, row): Mark[] => {
        let from = 0
        const work = workOf(load)
        return [
          ...rowWords(row, load.name, `${seconds(work)}, ${seconds(Math.max(0, cycleSeconds - work))} idle`),
          ...load.tasks.map((task, index): Mark => {
            const start = from
            from += task.seconds
            const ink = index % 2 === 0 ? 'ramp 2' : 'ramp 3'
            return {
              mark: 'area',
              x: [start, from],
              y: [row + 0.48, row + 0.92],
              ink,
              words: [task.name],
              wordsInk: index % 2 === 0 ? 'on ramp 2' : 'on ramp 3',
              tip: `${load.name}, ${task.name}: ${seconds(task.seconds)}`,
            }
          }),
        ]
      }),
      { mark: 'rule', x: [cycleSeconds, cycleSeconds], y: ['from', 'to'], ink: 'plan' },
    ],
    rightPixels: 14,
  }
}

function finding(loads: readonly StationLoad[], cycleSeconds: number, seconds: Seconds): string {
  const busiest = loads.reduce((most, load) => (workOf(load) > workOf(most) ? load : most))
  const idlest = loads.reduce((least, load) => (workOf(load) < workOf(least) ? load : least))
  const share = (load: StationLoad): string => formatShare(shareOf(load, cycleSeconds))
  const first = `${busiest.name} has most work, ${seconds(workOf(busiest))} of the cycle of ${seconds(cycleSeconds)} (${share(busiest)})`
  return workOf(idlest) === workOf(busiest)
    ? `${first}.`
    : `${first}; ${idlest.name} has least, ${seconds(workOf(idlest))} (${share(idlest)}).`
}

function loadTable(loads: readonly StationLoad[], cycleSeconds: number, seconds: Seconds): Table {
  return tableOf<StationLoad>({
    caption: `Work of each station in a cycle of ${seconds(cycleSeconds)}`,
    columns: [
      wordColumn('Station', 'station', 'name of the station', ({ name }) => name),
      { head: 'Work', text: (load) => seconds(workOf(load)), data: [['work_s', 'seconds of work, mean', workOf]] },
      {
        head: 'Of the cycle',
        text: (load) => formatShare(shareOf(load, cycleSeconds)),
        data: [['load', 'share of the cycle, 0 … 1', (load) => workOf(load) / cycleSeconds]],
      },
      wordColumn('Tasks', 'tasks', 'names', ({ tasks }) => tasks.map(({ name }) => name).join(', ')),
    ],
    rows: loads,
  })
}
