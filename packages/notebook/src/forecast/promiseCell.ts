/** What may be promised with one number of carriers, in two sentences: a shift, and a week of shifts. */
import { capital, formatNumber, roundedParts } from '@loopwright/charts/table'
import { quantileEstimate } from '@loopwright/stats'
import type { SweepCount } from '@loopwright/study'
import { type ProseCell, proseCell } from '../cells/cell.ts'
import { carriersText, isFixed } from '../sweep/answerWords.ts'
import { countWords } from '../sweep/countWords.ts'
import type { Period } from '../sweep/period.ts'
import { markdownOf } from '../words/markdownOf.ts'
import { FEW } from '../words/planWords.ts'
import { unitsOf } from '../words/unitWords.ts'
import { weeksOf, weekWords } from './weeks.ts'

/**
 * Stands with the answer of a sweep, on the page alone; null: with too few windows, or where some stood still, nothing may be promised.
 *
 * @param shiftsPerWeek  1: there are no weeks
 * @example promiseCell((await sweepCarriers(scenario.line, { counts: [4], replications: 25 }, { seed: '1', workers: 0 })).counts[0], period(scenario), 1).aside // => 'What may be promised'
 */
export function promiseCell(count: SweepCount, words: Period, shiftsPerWeek: number): ProseCell | null {
  const { p10, p50 } = countWords(count)
  if (count.gridlocks > 0 || count.mean === null || count.mean.mean === 0) return null
  const sentences = isFixed(count)
    ? [`With ${carriersText(count.carriers)} every ${words.one} makes ${unitsOf(countWords(count).mean)}.`]
    : p10 === null || p50 === null || count.units.length < FEW
      ? []
      : [`With ${carriersText(count.carriers)} nine of ten ${words.many} make at least ${p10} units, half of them ${p50} or more.`]
  if (sentences.length === 0) return null
  return {
    ...proseCell('promised', markdownOf([...sentences, ...weekSentences(count, words, shiftsPerWeek)].join(' '))),
    aside: 'What may be promised',
    pageOnly: true,
  }
}

/** The mean of a week is that of its shifts; how weeks differ is told from so many of them on. */
function weekSentences(count: SweepCount, words: Period, shiftsPerWeek: number): string[] {
  if (shiftsPerWeek === 1 || words.one !== 'shift' || count.mean === null) return []
  const { mean, halfWidth } = count.mean
  const week = capital(weekWords(shiftsPerWeek, words))
  if (isFixed(count)) return [`${week} makes ${unitsOf(formatNumber(mean * shiftsPerWeek, 0))}.`]
  const made = roundedParts(mean * shiftsPerWeek, halfWidth * shiftsPerWeek).value
  const weeks = weeksOf(count.units, shiftsPerWeek)
  if (weeks.length < FEW) return [`${week} makes ${unitsOf(made)} on average.`]
  return [
    `${week} makes ${unitsOf(made)} on average, and nine of ten such weeks at least ${formatNumber(quantileEstimate(weeks, 0.1).point, 0)}.`,
  ]
}
