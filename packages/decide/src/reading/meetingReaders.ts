/** The sections `acceptance` and `promise` of a decision file. */
import { nearest } from '@loopwright/line/check'
import { readChanges } from './alternativesReader.ts'
import type { AcceptanceSection, PromiseSection, ShiftSection } from './decision.ts'
import { byName, group, optional, type Reader, required, scalar, text, whole } from './fields.ts'
import * as say from './messages.ts'
import { own, quantity } from './quantities.ts'

const LOOK_SECONDS = 1800

/** Index of the alternative by its name; without one the first that is not today. */
const alternative =
  (names: readonly string[]): Reader<number> =>
  (at, reading) => {
    const name = scalar(at, reading)
    if (name === undefined) return undefined
    const index = names.indexOf(name)
    if (index >= 0) return index
    reading.report.add(at, say.notNamed('alternative', name, nearest(name, names), names))
    return undefined
  }

/** @param chosen  index of the alternative where the file names none */
export const readAcceptance =
  (names: readonly string[], chosen: number): Reader<AcceptanceSection> =>
  (at, reading) => {
    const found = group({
      of: optional(alternative(names), chosen),
      lasts: required(quantity('duration'), 'the length of a trial, such as "4 h"'),
      looks: optional(quantity('duration'), LOOK_SECONDS),
      share: optional(own('percent', { most: 0.99 }), 0.9),
      longer: optional(own('percent', { most: 1 }), 0.1),
      falseAlarm: optional(own('percent', { most: 0.5 }), 0.1),
      miss: optional(own('percent', { most: 0.5 }), 0.1),
      trials: optional(whole(1, 10), 3),
    })(at, reading)
    if (found === undefined) return undefined
    const { lasts, looks, trials, ...rest } = found
    return { ...rest, seconds: lasts, lookSeconds: Math.min(looks, lasts), trialsMost: trials }
  }

const learning = group({
  rate: required(own('percent', { most: 1 }), 'the time left at each doubling, such as "85 %"'),
  incompressible: optional(own('percent', { least: 'zero', most: 1 }), 0),
  standardAfter: required(whole(1, 1_000_000), 'units after which the standard times hold, such as 800'),
  weeks: optional(whole(1, 104), 8),
})

const SHIFTS_LEAST = 2

const shiftFields = group({
  variation: optional<string | null>(text, null),
  set: optional<Readonly<Record<string, string>>>(readChanges, {}),
  crew: optional<number | null>(whole(0, 10_000), null),
  daysPerWeek: optional<number | null>(whole(1, 7), null),
})

type ShiftFields = NonNullable<ReturnType<typeof shiftFields>>

const shifts: Reader<readonly (Omit<ShiftSection, 'daysPerWeek'> & { readonly daysPerWeek: number | null })[]> = (at, reading) => {
  // nothing but a name: the line as it stands
  const found = byName<ShiftFields>((one, of) => shiftFields(one.kind === 'null' ? { ...one, kind: 'map' } : one, of), 'shifts')(
    at,
    reading,
  )
  if (found === undefined) return undefined
  if (found.length < SHIFTS_LEAST) {
    reading.report.add(at, say.tooFew('shifts', found.length, SHIFTS_LEAST))
    return undefined
  }
  return found.map(([name, { set, ...rest }]) => ({ name, changes: set, ...rest }))
}

const promiseFields = (names: readonly string[], chosen: number) =>
  group({
    of: optional(alternative(names), chosen),
    daysPerWeek: optional(whole(1, 7), 5),
    shiftsPerDay: optional<number | null>(whole(1, 10), null),
    shifts: optional<ReturnType<typeof shifts> | null>(shifts, null),
    until: required(text, 'until when it holds, such as "the mix of this half-year stays"'),
    learning: optional<PromiseSection['learning']>(learning, null),
  })

/** @param chosen  index of the alternative where the file names none */
export const readPromise =
  (names: readonly string[], chosen: number): Reader<PromiseSection> =>
  (at, reading) => {
    const found = promiseFields(names, chosen)(at, reading)
    if (found === undefined) return undefined
    const { shifts: differ, shiftsPerDay, daysPerWeek, ...rest } = found
    if (differ == null) {
      if (shiftsPerDay !== null) return { ...rest, daysPerWeek, shiftsPerDay, shifts: null }
      reading.report.add(at, say.missing('shiftsPerDay', 'a whole number, such as 2; or "shifts:" by name, where they differ'))
      return undefined
    }
    if (shiftsPerDay !== null) {
      reading.report.add(at.entries.get('shiftsPerDay')!.value, say.shiftsTwice())
      return undefined
    }
    const each = differ.map((one): ShiftSection => ({ ...one, daysPerWeek: one.daysPerWeek ?? daysPerWeek }))
    return { ...rest, daysPerWeek, shiftsPerDay: each.length, shifts: each }
  }
