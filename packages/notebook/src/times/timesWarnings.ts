/** What looks odd in a time study: told, never mended in silence. */
import { formatNumber, formatShare } from '@loopwright/charts/table'
import { listWords } from '@loopwright/line'
import type { TaskTimes } from '@loopwright/measure'
import { type CautionCell, warningCell } from '../cells/cell.ts'
import { listLines } from '../words/listLines.ts'
import { secondsWords, timesName } from './timesWords.ts'

/** each of the tests below warns wrongly about once in a hundred tasks */
const ODD_P = 0.01
const NAMED = 6

/** Warnings, one for each kind of oddity. */
export function timesWarnings(studies: readonly TaskTimes[]): CautionCell[] {
  const warn = (id: string, title: string, say: string, lines: readonly string[]): CautionCell[] => {
    if (lines.length === 0) return []
    return [warningCell(`times-${id}`, title, `${listLines(lines, NAMED)}\n\n${say}`)]
  }
  const s = (value: number): string => `${secondsWords(value)} s`
  return [
    ...warn(
      'running',
      'A watch that ran on?',
      'If the watch was read and not stopped, each time is the difference of two readings: write the differences.',
      studies.filter((one) => one.onlyRises).map((one) => `${timesName(one)}: every time is longer than the one before.`),
    ),
    ...warn(
      'rounding',
      'Rounded times',
      'Rounded times hide the spread; it is larger or smaller than it looks. Time to the second.',
      studies.flatMap((one) =>
        one.rounding === null
          ? []
          : [`${timesName(one)}: ${formatShare(one.rounding.share)} of the times are multiples of ${one.rounding.step} s.`],
      ),
    ),
    ...warn(
      'outliers',
      'Times far from the others',
      'They are kept. A dropped part or a talk is no work of this task: it belongs to the stops, and is then taken out of the table.',
      studies.flatMap((one) => {
        if (one.outliers === null) return []
        const { observations, meanWithout, cvWithout } = one.outliers
        const places = observations.map(({ place, observedSeconds }) => `${place}: ${s(observedSeconds)}`)
        return [
          `${timesName(one)}: ${listWords(places, 4)}. With them mean ${s(one.mean)}, spread ${formatShare(one.cv!)}; without ${s(meanWithout)}, ${formatShare(cvWithout)}.`,
        ]
      }),
    ),
    ...warn(
      'trend',
      'Times that change over the session',
      'Learning, tiredness, or another way of working: ask what changed, and time again when it is steady.',
      studies.flatMap((one) =>
        one.trend === null || one.trend.p >= ODD_P || one.onlyRises
          ? []
          : [
              `${timesName(one)}: from the first to the last time they ${one.trend.change < 0 ? 'fall' : 'rise'} by ${s(Math.abs(one.trend.change))} (chance ${chance(one.trend.p)}).`,
            ],
      ),
    ),
    ...warn(
      'people',
      'Operators who differ',
      'All are simulated together. Ask whether they work by the same method; who will work at the line decides its times.',
      studies.flatMap((one) => {
        const { people } = one
        if (people === null || people.p === null || people.p >= ODD_P) return []
        const sorted = people.people.toSorted((a, b) => a.mean - b.mean)
        const [fast, slow] = [sorted[0]!, sorted.at(-1)!]
        return [`${timesName(one)}: ${fast.name} ${s(fast.mean)}, ${slow.name} ${s(slow.mean)} on average (chance ${chance(people.p)}).`]
      }),
    ),
    ...warn(
      'mixture',
      'No curve holds',
      'Are there two variants, or two ways of working, in these times? The measured values are simulated instead; they know no time longer than the longest measured.',
      studies.filter(({ choice }) => choice?.status === 'none holds').map((one) => `${timesName(one)}: ${one.n} times.`),
    ),
    ...warn(
      'few',
      'Too few times to know their spread',
      'A spread of 12 % stands in (common practice, no source).',
      studies.filter(({ stands }) => stands === 'mean alone').map((one) => `${timesName(one)}: ${one.n}.`),
    ),
  ]
}

const chance = (p: number): string => (p < 0.001 ? 'below 0.001' : formatNumber(p, 3))
