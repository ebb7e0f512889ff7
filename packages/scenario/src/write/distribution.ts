/** A duration as a file says it. */
import { type Distribution, distributionKinds, type FieldIs } from '@loopwright/stats'
import { percentText } from '../text/decimal.ts'
import { phraseOf } from '../text/phrase.ts'
import { flag, flow, flowList, number, seconds, text, type Value } from './nodes.ts'

/** How a field is written, by what it is. */
const WRITTEN: { readonly [Is in FieldIs]: (part: never) => Value | null } = {
  value: seconds,
  positive: seconds,
  extra: seconds,
  limit: (part: number | null) => (part === null ? null : seconds(part)),
  values: (part: readonly number[]) => flowList(part.map(number)),
  share: (part: number) => text(percentText(part)),
  ratio: (part: number) => text(percentText(part)),
  number,
  numbers: (part: readonly number[]) => flowList(part.map(number)),
  flag,
  distribution,
}

/** A phrase where there is one, else the full form. */
export function distribution(d: Distribution): Value {
  const phrase = phraseOf(d)
  if (phrase !== null) return text(phrase)
  const { fields } = distributionKinds().find(({ kind }) => kind === d.kind)!
  const parts = Object.entries(fields).flatMap(([name, [is]]) => {
    const part = [name, WRITTEN[is](d[name as keyof Distribution] as never)] as const
    return is === 'values' ? [['unit', text('s')] as const, part] : [part]
  })
  return flow([['kind', text(d.kind)], ...parts])
}
