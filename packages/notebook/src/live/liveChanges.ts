/** What the reader of a page has set, as changes of the scenario: the same that a command line or a variation says. */
import { type Changes, type ChangeValue, type FileValues, parseQuantity, timesScaled } from '@loopwright/scenario'
import type { LiveInput } from './liveInput.ts'

/** Texts by key of input, where they are not those of the file; `=` in front of a key: a path of the scenario itself. */
export type LiveValues = Readonly<Record<string, string>>

export type LiveChanges =
  | { readonly kind: 'changes'; readonly changes: Changes }
  /** a text that no time, share or number can be read from; sentences without a full stop */
  | { readonly kind: 'fault'; readonly key: string; readonly message: string; readonly fix: string }

/** begins a key that is a path of the scenario file */
export const OWN_PATH = '='

/**
 * The changes that values stand for, in the order of the inputs.
 *
 * @param at  what the scenario file says
 * @example liveChanges(fileValues('carriers: { count: 4 }'), [{ key: 'carriers', group: 'Line', label: 'Carriers', file: '4', shown: { kind: 'range', from: 1, to: 9, step: 1, unit: '' }, does: { kind: 'path', path: 'carriers.count' } }], { carriers: '5' }).changes // => { 'carriers.count': '5' }
 */
export function liveChanges(at: FileValues, inputs: readonly LiveInput[], values: LiveValues): LiveChanges {
  const changes: Record<string, ChangeValue> = {}
  const shares = new Map<string, number>()
  const people = new Map<string, number>()
  for (const { key, label, does, file } of inputs) {
    const value = values[key]?.trim()
    if (value === undefined || value === file) continue
    if (value === '')
      return { kind: 'fault', key, message: `${label}: there is no value`, fix: `write one as the file does, such as "${file}"` }
    if (does.kind === 'path') changes[does.path] = value
    else if (does.kind === 'times') {
      const { value: seconds, fault } = parseQuantity(value, 'duration')
      if (fault !== null) return { kind: 'fault', key, message: `${label}: ${fault.sentence.message}`, fix: fault.sentence.fix }
      for (const path of does.paths) {
        const written = at(path)
        const scaled = written === null ? null : timesScaled(written, seconds / does.meanSeconds)
        if (scaled !== null) changes[path] = scaled
      }
    } else if (does.kind === 'share') {
      const share = /^(\d+(?:\.\d+)?)\s*%?$/.exec(value)?.[1]
      if (share === undefined || Number(share) > 100)
        return { kind: 'fault', key, message: `${label}: "${value}" is no share`, fix: 'write a percentage from 0 % to 100 %' }
      shares.set(does.variant, Number(share))
    } else {
      if (!/^\d{1,2}$/.test(value))
        return { kind: 'fault', key, message: `${label}: "${value}" is no number of people`, fix: 'write a whole number from 0 on' }
      people.set(does.operator, Number(value))
    }
  }
  if (shares.size > 0) {
    const mixed = mixedShares(at('products.variants'), shares)
    if (mixed === null) {
      const sum = [...shares.values()].reduce((total, share) => total + share, 0)
      return {
        kind: 'fault',
        key: 'share',
        message: `the shares set add up to ${sum} %, which leaves no mix`,
        fix: 'let them add up to 100 % or less',
      }
    }
    changes['products.variants'] = mixed
  }
  if (people.size > 0) changes.operators = manned(at('operators'), people)
  const own = Object.entries(values).flatMap(([key, value]): [string, string][] =>
    key.startsWith(OWN_PATH) ? [[key.slice(OWN_PATH.length), value]] : [],
  )
  // each becomes a key of its own, `__proto__` too, which the reader of the scenario then refuses
  return { kind: 'changes', changes: Object.fromEntries([...Object.entries(changes), ...own]) }
}

/** Shares that add up to 100 %: those not set keep their proportions to each other. Null where nothing is left for them, or too much. */
function mixedShares(written: ChangeValue | null, set: ReadonlyMap<string, number>): ChangeValue | null {
  if (written === null || typeof written !== 'object' || Array.isArray(written)) return null
  const all = Object.entries(written).map(([variant, share]) => ({ variant, share: Number.parseFloat(String(share)) }))
  const taken = [...set.values()].reduce((sum, share) => sum + share, 0)
  const others = all.filter(({ variant }) => !set.has(variant))
  const before = others.reduce((sum, { share }) => sum + share, 0)
  const rest = 100 - taken
  if (rest < -1e-9 || (before === 0 && Math.abs(rest) > 1e-9)) return null
  const round = (share: number): number => Number(share.toFixed(4))
  const shares = all.map(
    ({ variant, share }) => [variant, round(set.get(variant) ?? (before === 0 ? 0 : (share / before) * rest))] as const,
  )
  return Object.fromEntries(shares.map(([variant, share]) => [variant, `${share} %`]))
}

/** As many of each named operator as are wanted: further ones get a number behind their name. */
function manned(written: ChangeValue | null, wanted: ReadonlyMap<string, number>): ChangeValue {
  const all = Object.entries((written ?? {}) as Readonly<Record<string, ChangeValue>>)
  const taken = new Set(all.map(([name]) => name))
  return Object.fromEntries(
    all.flatMap(([name, what]) => {
      const names = [name]
      for (let number = 2; names.length < (wanted.get(name) ?? 1); number += 1) {
        const next = `${name}-${number}`
        if (!taken.has(next)) names.push(next)
      }
      return (wanted.get(name) ?? 1) === 0 ? [] : names.map((each): [string, ChangeValue] => [each, what])
    }),
  )
}
