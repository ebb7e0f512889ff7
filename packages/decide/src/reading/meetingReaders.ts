/** The sections `acceptance` and `promise` of a decision file. */
import { nearest } from '@loopwright/line/check'
import type { AcceptanceSection, PromiseSection } from './decision.ts'
import { group, optional, type Reader, required, scalar, text, whole } from './fields.ts'
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

/** @param chosen  index of the alternative where the file names none */
export const readPromise =
  (names: readonly string[], chosen: number): Reader<PromiseSection> =>
  (at, reading) =>
    group({
      of: optional(alternative(names), chosen),
      daysPerWeek: optional(whole(1, 7), 5),
      shiftsPerDay: required(whole(1, 10), 'a whole number, such as 2'),
      until: required(text, 'until when it holds, such as "the mix of this half-year stays"'),
      learning: optional<PromiseSection['learning']>(learning, null),
    })(at, reading)
