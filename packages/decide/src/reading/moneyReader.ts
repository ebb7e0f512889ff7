/** The section `money` of a decision file. */
import type { MoneySection } from './decision.ts'
import { group, number, optional, type Reader, required, whole } from './fields.ts'
import { money, own, quantity } from './quantities.ts'

/** two years are usual */
const HURDLE_MONTHS = 24
const USUAL_HURDLE = 'two years: common practice, no source'

const fields = group({
  wage: required(money('hour'), 'an amount such as "38 €/h"'),
  crew: required(whole(1, 10_000), 'the persons on a shift, such as 8'),
  overtimeFactor: optional(number(0, 10), 1.5),
  daysPerYear: required(whole(1, 366), 'working days, such as 230'),
  shiftsPerDay: required(whole(1, 10), 'a whole number, such as 2'),
  paidHours: optional<number | null>(quantity('duration'), null),
  years: required(whole(1, 100), 'how many years are looked at, such as 7'),
  interest: required(own('percent', { least: 'zero', most: 1 }), 'interest a year, such as "10 %"'),
  hurdle: optional<number | null>(own('months', { most: 1200 }), null),
  overtimeWorked: optional<number | null>(quantity('duration', 'zero'), null),
})

export const readMoney: Reader<MoneySection> = (at, reading) => {
  const found = fields(at, reading)
  if (found === undefined) return undefined
  const { hurdle, paidHours, overtimeWorked, ...rest } = found
  return {
    ...rest,
    paidHours: paidHours === null ? null : paidHours / 3600,
    hurdleMonths: hurdle ?? HURDLE_MONTHS,
    hurdleSource: hurdle === null ? USUAL_HURDLE : 'as the file says',
    overtimeWorked: overtimeWorked === null ? null : overtimeWorked / 60,
  }
}
