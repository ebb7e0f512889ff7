/** What a setting makes, in large figures beside those of the file. */
import { formatNumber, roundedParts } from '@loopwright/charts/table'
import { quantileEstimate } from '@loopwright/stats'
import type { ComparedLine, CompareResult } from '@loopwright/study/compare'
import type { AnswerFigure } from '../cells/cell.ts'
import { differenceWords } from '../compare/compareWords.ts'
import { planFigure } from '../sweep/answerFigures.ts'
import type { Period } from '../sweep/period.ts'
import type { LiveFigure } from './liveTold.ts'

/** The last line in figures, each beside that of the first. */
export function liveFigures({ lines, pairs }: CompareResult, period: Period): LiveFigure[] {
  const [first, last] = [lines[0]!, lines.at(-1)!]
  const now = lineFigures(last, period)
  const was = lineFigures(first, period)
  const more = pairs.find((pair) => pair.second === 0 && pair.first === lines.length - 1)?.difference
  return now.map((figure) => {
    const before = was.find(({ label }) => label === figure.label)
    const difference =
      figure.units && more !== undefined && more.halfWidth + Math.abs(more.mean) > 0 ? signed(differenceWords(more).withHalfWidth) : ''
    return {
      label: figure.label,
      value: figure.value,
      sure: figure.sure,
      was: before === undefined ? '–' : before.value === figure.value && difference === '' ? '' : before.value,
      more: difference,
    }
  })
}

const signed = (text: string): string => (text.startsWith('−') || text.startsWith('-') ? text : `+${text}`)

function lineFigures(
  { units, mean, plan, planVerdict, gridlocks }: ComparedLine,
  { each, many }: Period,
): (AnswerFigure & { units?: true })[] {
  if (gridlocks > 0)
    return [{ label: `Units ${each}`, value: 'stands still', sure: `in ${gridlocks} of ${units.length} ${many}`, units: true }]
  if (mean === null) return []
  const { value, half } = roundedParts(mean.mean, mean.halfWidth)
  return [
    { label: `Units ${each}`, value, sure: half === null ? '' : `± ${half} on average`, units: true },
    ...(mean.halfWidth === 0
      ? []
      : [{ label: `Nine of ten ${many}`, value: formatNumber(quantileEstimate(units, 0.1).point, 0), sure: 'units or more' }]),
    ...(plan === null || planVerdict === null ? [] : [planFigure(plan, planVerdict, many)]),
  ]
}
