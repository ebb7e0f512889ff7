/** The section `alternatives` of a decision file. */
import type { Doubted } from '../money/pricedLine.ts'
import type { Alternative, AlternativeSource } from './decision.ts'
import { byName, group, optional, type Reader, scalar, text, whole } from './fields.ts'
import * as say from './messages.ts'
import { money, own, quantity } from './quantities.ts'

const NOTHING: Doubted = { value: 0, doubt: 0 }
const LEAST = 2

/** Values changed by path. */
export const readChanges: Reader<Readonly<Record<string, string>>> = (at, reading) => {
  const changes = byName(scalar, 'changed values by path')(at, reading)
  return changes === undefined ? undefined : Object.fromEntries(changes)
}

const fields = group({
  file: optional<string | null>(text, null),
  variation: optional<string | null>(text, null),
  set: optional<Readonly<Record<string, string>> | null>(readChanges, null),
  assumes: optional<string | null>(text, null),
  crew: optional<number | null>(whole(1, 10_000), null),
  investment: optional(money('once'), NOTHING),
  runningCost: optional(money('year'), NOTHING),
  salvage: optional(money('once'), NOTHING),
  floor: optional<number | null>(own('area'), null),
  walkPerHandling: optional<number | null>(quantity('length', 'zero'), null),
})

const each: Reader<Omit<Alternative, 'name'>> = (at, reading) => {
  // nothing but a name: the scenario as it stands
  const found = at.kind === 'null' ? fields({ ...at, kind: 'map' }, reading) : fields(at, reading)
  if (found === undefined) return undefined
  const { file, variation, set, salvage, walkPerHandling, ...rest } = found
  const sources = { file, variation, set }
  const given = (['file', 'variation', 'set'] as const).filter((key) => sources[key] !== null)
  if (given.length > 1) {
    reading.report.add(at, say.onlyOneSource(given))
    return undefined
  }
  const source: AlternativeSource =
    file !== null
      ? { kind: 'file', file }
      : variation !== null
        ? { kind: 'variation', variation }
        : set !== null
          ? { kind: 'set', changes: set }
          : { kind: 'scenario' }
  return { ...rest, source, salvage: salvage.value, metresPerHandling: walkPerHandling }
}

export const readAlternatives: Reader<readonly Alternative[]> = (at, reading) => {
  const found = byName(each, 'alternatives')(at, reading)
  if (found === undefined) return undefined
  if (found.length < LEAST) {
    reading.report.add(at, say.tooFew('alternatives', found.length, LEAST))
    return undefined
  }
  return found.map(([name, one]) => ({ name, ...one }))
}
