/** What a sweep says about the number of carriers, in one or two sentences. */
import type { SweepCount, SweepResult } from '@loopwright/study'
import { formatNumber } from '../table/format.ts'
import { carriersText } from '../draw/window.ts'

/**
 * The caption of the throughput chart.
 *
 * @returns  such as "Beyond 10 carriers output gains less than 1 %; beyond 14 it falls by more than 1 %."
 */
export function throughputFinding({ counts, answer }: Pick<SweepResult, 'counts' | 'answer'>, per: string): string {
  const known = counts.filter((count): count is SweepCount & { mean: NonNullable<SweepCount['mean']> } => count.mean !== null)
  if (answer === null || known.length === 0) return `There are too few ${per}s simulated to compare the counts.`
  const still = counts.filter(({ gridlocks }) => gridlocks > 0)
  const stands =
    still.length === 0
      ? ''
      : ` With ${carriersText(still[0]!.carriers)}${still.length > 1 ? ' and more' : ''} ${still.every(({ gridlocks, replications }) => gridlocks === replications) ? 'all' : 'some'} runs came to a standstill (gridlock).`
  const meanWith = (carriers: number) => known.find((count) => count.carriers === carriers)!.mean.mean
  if (known.length === 1)
    return `${carriersText(known[0]!.carriers)} ${known[0]!.carriers === 1 ? 'makes' : 'make'} ${formatNumber(known[0]!.mean.mean, 0)} units per ${per}.${stands}`
  const percent = `${formatNumber(answer.within * 100, answer.within < 0.01 ? 1 : 0)} %`
  const best = meanWith(answer.best)
  const border = (1 - answer.within) * best
  const lastGood = known.findLast(({ mean }) => mean.mean >= border)!.carriers
  const falls = lastGood < known.at(-1)!.carriers ? `beyond ${lastGood} it falls by more than ${percent}` : null
  const start = answer.chosen
  if (start === null) {
    if (still.some(({ carriers }) => carriers === answer.best)) return stands.trim()
    return `No count is shown yet to come within ${percent} of the best (${carriersText(answer.best)}, ${formatNumber(best, 0)} units).${stands}`
  }
  if (answer.best <= start) {
    const makes = answer.best === 1 ? 'makes' : 'make'
    const alike = known.filter(({ mean }) => mean.mean === best).length
    const first = alike === known.length && alike > 1 ? `All counts tried make the same` : `${carriersText(answer.best)} ${makes} the most`
    const more = falls === null ? first : `${first}; ${falls.replace(' it ', ' output ')}`
    return `${more}${answer.bestAtUpperEnd ? ', and no more were tried' : ''}.${stands}`
  }
  const gain = best / meanWith(start) - 1
  const gains = gain <= answer.within / (1 - answer.within) ? `gains less than ${percent}` : `gains ${formatNumber(gain * 100, 1)} %`
  return `Beyond ${carriersText(start)} output ${gains}${falls === null ? '' : `; ${falls}`}.${answer.bestAtUpperEnd ? ' The best count is the largest tried.' : ''}${stands}`
}
