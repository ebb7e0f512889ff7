/** A known line, and data of it drawn as a clipboard would have them: what tests of the whole way from table to forecast stand on. */
import {
  assemble,
  type MeasuredData,
  readTable,
  readTimes,
  redrawTimes,
  type Stop,
  type StopStudy,
  stopStudy,
  type TaskTimes,
  timeStudy,
} from '@loopwright/measure'
import { writeDistribution } from '@loopwright/scenario'
import { type Distribution, quantile, stream } from '@loopwright/stats'
import { scenarioOf } from '../helpers/scenarioTexts.ts'

/** Work of two stations, of which the slower one limits: means 52 and 47 s. */
const TRUTH: Readonly<Record<string, Distribution>> = {
  fit: { kind: 'lognormal', mean: 52, cv: 0.25 },
  wire: { kind: 'lognormal', mean: 47, cv: 0.25 },
}

const text = (fit: string, wire: string): string => `format: 1
question: What does the line make?
name: Round trip
warmup: 15 min
length: 2 h
drive: { speed: 15 m/min }
carriers: { count: 5, length: 0.75 m }
loop: 10 zones of 1 m
stations:
  Load: { zone: Z01, unload: {}, load: { place: 10 s } }
  Fit: { zone: Z04, work: { fit: ${fit} } }
  Wire: { zone: Z07, work: { wire: ${wire} } }
`

const SKELETON = text('50 s', '50 s')
export const TRUE_LINE = scenarioOf(text(writeDistribution(TRUTH.fit!), writeDistribution(TRUTH.wire!))).line

/** Times of a clipboard: to the tenth of a second, with a decimal comma, a total row, an empty row and a word among them. */
function clipboard(trial: number, times: number): Uint8Array {
  const rows = Object.entries(TRUTH).flatMap(([task, distribution]) => {
    const uniform = stream('round trip', trial, task)
    return Array.from({ length: times }, () => `${task};${quantile(distribution, uniform()).toFixed(1).replace('.', ',')}`)
  })
  rows.splice(times, 0, 'fit;tea break', ';')
  return new TextEncoder().encode(`Task;Time (s)\n${rows.join('\n')}\nTotal;9999\n`)
}

/** Of such a clipboard, read and judged. */
export function judgedTimes(trial: number, times: number): TaskTimes[] {
  const { observations } = readTimes(readTable(clipboard(trial, times), 'times.csv'))
  return timeStudy(observations, { samples: 19, seed: `${trial}` })
}

/** A stop log of two shifts of 8 h: exponential between, lognormal repairs; the last may be open at its end. */
export function judgedStops(trial: number, betweenSeconds: number, repairSeconds: number): StopStudy {
  const uniform = stream('round trip', trial, 'stops')
  const [from, to] = [0, 57_600]
  const stops: Stop[] = []
  for (let at = from; ; ) {
    const start = at + quantile({ kind: 'exponential', mean: betweenSeconds }, uniform())
    const end = start + quantile({ kind: 'lognormal', mean: repairSeconds, cv: 0.66 }, uniform())
    if (start >= to) break
    stops.push({ place: 'Fit', cause: 'jam', start, end: end > to ? null : end, line: stops.length + 2 })
    at = end
  }
  return stopStudy(stops, { from, to, shortBelow: 0, seed: `${trial}` })
}

/** The line as measured, and as others might have measured it. */
export function measuredLines(trial: number, times: number, draws: number) {
  const studies = judgedTimes(trial, times)
  const put = (of: typeof studies) => {
    const data: MeasuredData = { times: { studies: of, source: { file: 'times.csv' } }, stops: null, mix: null }
    const { scenario, faults } = assemble(SKELETON, data)
    if (scenario === null) throw new Error(faults.join('; '))
    return scenario.line
  }
  const redrawn = Array.from({ length: draws }, (_, draw) => redrawTimes(studies, `trip ${trial}`, draw))
  return {
    line: put(studies),
    redrawn: redrawn.map(({ study, levels }) => ({ line: put(study), levels })),
    inputs: redrawn[0]!.inputs,
  }
}
