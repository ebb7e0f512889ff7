/** One whole more or fewer, in words: "a second operator like Ann brings 111 ± 2 units a shift". */
import { capital, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import type { WholeEffect } from '@loopwright/study'
import { differenceWords } from '../compare/compareWords.ts'
import type { Period } from '../sweep/period.ts'
import { unitsOf } from '../words/unitWords.ts'

/** "a second operator like Ann", "one carrier fewer than 9" */
export function wholeChangeName({ kind, name, step, count }: Omit<WholeEffect, 'difference'>): string {
  if (kind === 'operator') {
    if (step < 0) return count === 1 ? `doing without operator ${name}` : `one operator fewer than ${count} like ${name}`
    return count === 1 ? `a second operator like ${name}` : `one operator more like ${name}`
  }
  const one = kind === 'carrier' ? 'carrier' : 'repair crew'
  return `one ${one} ${step > 0 ? 'more' : 'fewer'} than ${count}`
}

/** Without a full stop; where nothing is shown it says so. */
export function wholeChangeSentence(effect: WholeEffect, each: string): string {
  const name = wholeChangeName(effect)
  const { difference } = effect
  if (difference.status === 'no difference shown') {
    const { low, high } = differenceWords(difference)
    return `${name}: no difference shown (${low} to ${high} units ${each})`
  }
  if (difference.mean === 0) return `${name} changes nothing`
  const size = differenceWords({ ...difference, mean: Math.abs(difference.mean) }).withHalfWidth
  return `${name} ${difference.mean > 0 ? 'brings' : 'costs'} ${unitsOf(size)} ${each}`
}

/** All of them, the largest gain first; null where there is none. */
export function wholeChangeTable(effects: readonly WholeEffect[], { one, many }: Pick<Period, 'one' | 'many'>): Table | null {
  if (effects.length === 0) return null
  return tableOf<WholeEffect>({
    caption: 'One more, one fewer: the largest gain first',
    columns: [
      wordColumn('Change', 'change', 'what is one more or one fewer', (effect) => capital(wholeChangeName(effect))),
      {
        head: `Units per\n${one}`,
        text: ({ difference }) => differenceWords(difference).withHalfWidth,
        data: [
          ['more', `units per ${one} more, mean`, ({ difference }) => difference.mean],
          ['more_low', 'lower limit of the 95 % interval', ({ difference }) => difference.low],
          ['more_high', 'upper limit of the 95 % interval', ({ difference }) => difference.high],
        ],
      },
    ],
    rows: effects,
    note: `${effects.some(({ difference }) => difference.halfWidth > 0) ? 'With 95 % intervals, in' : 'In'} the same simulated ${many} as the line as it is.`,
  })
}
