/** What a loss waterfall says, in sentences. */
import { capital, differenceParts, formatNumber, roundedParts, type RoundedParts, withHalf } from '@loopwright/charts/table'
import { listWords } from '@loopwright/line'
import type { LossResult } from '@loopwright/study'
import { differenceWords, levelWords } from '../compare/compareWords.ts'
import type { AnswerFigure } from '../cells/cell.ts'
import { figureOf, moreFigure } from '../sweep/answerFigures.ts'
import type { Period } from '../sweep/period.ts'
import { counted } from '../words/countedWords.ts'
import { intervalsCaution } from '../words/intervalWords.ts'
import { unitsOf } from '../words/unitWords.ts'
import { whyMore } from './lossSigns.ts'

type Words = Pick<Period, 'each' | 'many' | 'line'>
type Total = NonNullable<LossResult['forecast']>
type Difference = LossResult['causes'][number]['step']

/** What the line makes, what it would make without the causes, and which cause is worth most if it alone goes. */
export function lossSentences({ forecast, ideal, gap, causes }: LossResult, words: Words): string[] {
  const { each, line } = words
  if (forecast === null || ideal === null || gap === null) return [`No answer yet: losses need at least 2 simulated ${words.many}.`]
  const made = `As it stands the ${line} makes ${unitsOf(totalWords(forecast))} ${each}.`
  if (causes.length === 0) return [`${made} Nothing was found that it could lose units by.`]
  const lost =
    gap.mean > 0
      ? `so that ${unitsOf(sizeWords(gap))} ${each} ${sizeWords(gap) === '1' ? 'is' : 'are'} lost`
      : gap.mean < 0
        ? `${sizeWords(gap)} fewer`
        : 'no more'
  const without = `Without the ${causes.length === 1 ? 'cause' : `${causes.length} causes`} in the table it would make ${totalWords(ideal)}, ${lost}.`
  return [`${made} ${without}`, ...aloneSentence(causes, words)]
}

/** What the line makes, what it would make without the causes, what is lost, and the costliest cause. */
export function lossFigures({ forecast, ideal, gap, causes }: LossResult, { each }: Words): AnswerFigure[] {
  if (forecast === null || ideal === null || gap === null || causes.length === 0) return []
  const [most] = costliest(causes)
  return [
    figureOf('Lost', differenceParts(gap), `units ${each}`),
    figureOf('As it stands', totalParts(forecast), `units ${each}`),
    figureOf('Without these causes', totalParts(ideal), `units ${each}`),
    ...(most === undefined ? [] : [moreFigure(capital(most.name), differenceParts(withoutSign(most.alone)), 'if it alone were gone')]),
  ]
}

/** Causes that are shown to cost units by themselves, the costliest first. */
const costliest = (causes: LossResult['causes']): LossResult['causes'] =>
  causes.filter(({ alone }) => alone.mean > 0 && alone.status !== 'no difference shown').toSorted((a, b) => b.alone.mean - a.alone.mean)

/** The cause that costs most by itself: what would be gained if it alone were gone. */
function aloneSentence(causes: LossResult['causes'], { each, line }: Words): string[] {
  const [first, ...others] = costliest(causes)
  if (first === undefined) return ['No single cause is shown to cost units by itself.']
  const near = others.filter(({ alone }) => alone.high >= first.alone.low)
  const gain = `with that alone gone the ${line} would make ${unitsOf(sizeWords(first.alone))} ${each} more`
  if (near.length === 0) return [`The costliest single cause is ${first.name}: ${gain}.`]
  const alike = near.map(({ name, alone }) => `${name} (${sizeWords(alone)})`)
  return [`The costliest single cause may be ${first.name}: ${gain}; ${listWords(alike)} cannot be told from it.`]
}

/** Where the numbers come from, that they add up, and why those of single causes do not. */
export function lossSure(result: LossResult, { each, many, line }: Words): string[] {
  const { forecast, ideal, gap, causes, interaction, carriers, bestCarriers } = result
  if (forecast === null || ideal === null || gap === null || interaction === null || causes.length === 0) return []
  const n = formatNumber(forecast.n, 0)
  const random = causes.some(({ step, alone }) => step.halfWidth > 0 || alone.halfWidth > 0)
  if (gap.mean === 0 && causes.every(({ step, alone }) => step.mean === 0 && alone.mean === 0))
    return [
      `The same ${n} simulated ${many} were run again with each cause taken out and all other chance as it was: none of them changes anything.`,
    ]
  return [
    `The same ${n} simulated ${many} were run again with each cause taken out and all other chance as it was. ${random ? `Intervals are at ${levelWords(forecast.level)} each; more simulated ${many} narrow them.${intervalsCaution(forecast.n, [forecast, ideal], many)}` : `Every one of them makes the same, so that there are no intervals.`}`,
    `But for rounding, the causes sum to the ${unitsOf(differenceWords(gap).withHalfWidth)} between the two totals. ${together(interaction, each)}`,
    ...plusSentence(causes, line),
    ...(causes.some(({ kind }) => kind === 'carriers') ? [carrierSentence(carriers, bestCarriers)] : []),
  ]
}

function together(interaction: Difference, each: string): string {
  if (interaction.status === 'no difference shown' || interaction.mean === 0)
    return 'What each would bring if it alone were gone sums to about as much.'
  const size = `${unitsOf(sizeWords(interaction))} ${each}`
  return interaction.mean > 0
    ? `What each would bring if it alone were gone sums to ${size} less: as long as the others are there, one that goes brings less.`
    : `What each would bring if it alone were gone sums to ${size} more: once some are gone, the others count for less.`
}

/** The plus sign, only where one stands. */
function plusSentence(causes: LossResult['causes'], line: Words['line']): string[] {
  const helping = causes.filter(({ step }) => /[1-9]/.test(differenceWords(step).size) && step.mean < 0)
  if (helping.length === 0) return []
  const shown = helping.filter(({ step }) => step.status !== 'no difference shown')
  const names = listWords(helping.map(({ name }) => name))
  const which =
    shown.length === 0
      ? ' The interval holds 0, so that it may be chance.'
      : ` That may be because ${shown.map((cause) => (shown.length === 1 ? whyMore(cause) : `${whyMore(cause)} (${cause.name})`)).join('; ')}.`
  return [`A plus sign (${names}): with it there the ${line} makes more than with it taken out.${which}`]
}

function carrierSentence(carriers: number, best: number): string {
  return carriers === best
    ? `Shortage of carriers: no other number than ${carriers} was shown to make more in short runs, so that nothing is taken out.`
    : `${best < carriers ? 'Too many' : 'Shortage of'} carriers: taken out means ${counted(best, 'carrier')} in place of ${carriers}, the best number in short runs.`
}

/** "330 ± 1"; of what has no chance in it "330". */
const totalWords = (total: Total): string => withHalf(totalParts(total))

const totalParts = ({ mean, halfWidth }: Total): RoundedParts => roundedParts(mean, halfWidth)

/** "40.4 ± 0.6", without a sign */
function sizeWords(difference: Difference): string {
  return differenceWords(withoutSign(difference)).withHalfWidth
}

const withoutSign = (difference: Difference): Difference => ({ ...difference, mean: Math.abs(difference.mean) })
