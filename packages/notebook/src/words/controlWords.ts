/** Means with the luck of their worlds taken out, as they are told. */
import { formatNumber, formatWithHalfWidth } from '@loopwright/charts/table'
import { listWords } from '@loopwright/line'
import { outputMean, type SweepCount } from '@loopwright/study'
import type { Period } from '../sweep/period.ts'

type Count = Pick<SweepCount, 'mean' | 'controlled' | 'units'>

/** The count with the mean that is told of it: without the luck of its worlds where that is shown to help, and plain where the reader wants it so. */
export function toldCount<C extends Count>(count: C, plain: boolean = false): C {
  const { mean, controlled } = count
  if (controlled === null || mean === null) return count
  if (plain) return { ...count, controlled: null }
  const { halfWidth, low, high } = controlled
  return { ...count, mean: { ...mean, mean: controlled.mean, halfWidth, low, high, status: 'ok' } }
}

/** " The luck of these shifts with stops and work is taken out of it, which makes them as good as 550 plain shifts, whose mean is 333 ± 2."; empty where nothing is taken out. */
export function controlSentence({ controlled, units }: Count, { many }: Pick<Period, 'many'>): string {
  const plain = outputMean(units, true)
  if (controlled === null || plain === null) return ''
  const luck = `The luck of these ${many} with ${listWords([...new Set(controlled.controls.map(luckWord))])} is taken out of it`
  const raw = `whose mean is ${formatWithHalfWidth(plain.mean, plain.halfWidth)}`
  return controlled.worth === null
    ? ` ${luck}, and nothing else is left to chance; plain ${many} have a mean of ${formatWithHalfWidth(plain.mean, plain.halfWidth)}.`
    : ` ${luck}, which makes them as good as ${formatNumber(twoDigits(controlled.worth), 0)} plain ${many}, ${raw}.`
}

function luckWord(control: string): string {
  switch (control) {
    case 'stops of stations':
    case 'stops on the way':
      return 'stops'
    case 'work':
      return 'times of work'
    default:
      return control
  }
}

/** Rounded down: no more is promised than there is. */
function twoDigits(value: number): number {
  const unit = 10 ** Math.max(0, Math.floor(Math.log10(value)) - 1)
  return unit * Math.floor(value / unit)
}
