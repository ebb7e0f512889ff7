import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

const codes = (calendar: string) =>
  readScenario(scenarioText(['warmup: 1 h\nlength: 8 h\n', `calendar: { ${calendar}, judge: second shift }\n`])).problems.map(
    (problem) => problem.code,
  )
const shift = (breaks: string) => codes(`shift: { from: "06:00", to: "14:00" }, breaks: [${breaks}]`)

test.each([
  ['{ after: 0 s, lasts: 10 min }', []],
  ['{ after: 470 min, lasts: 10 min }', []],
  ['{ after: 471 min, lasts: 10 min }', ['E_BREAK_OUTSIDE']],
  ['{ at: "05:00", lasts: 10 min }', ['E_BREAK_OUTSIDE']],
  ['{ after: 60 min, lasts: 10 min }, { after: 70 min, lasts: 10 min }', []],
  ['{ after: 65 min, lasts: 10 min }, { after: 60 min, lasts: 10 min }', ['E_BREAKS_OVERLAP']],
  ['{ lasts: 10 min }', ['E_BREAK_WHEN']],
  ['{ after: 60 min, lasts: 0 min }', ['E_ZERO']],
  ['{ after: -60 min, lasts: 10 min }', ['E_NEGATIVE']],
  ['{ after: 0 s, lasts: 480 min }', ['E_NO_NET_TIME']],
])('breaks %s', (breaks, expected) => {
  expect(shift(breaks)).toEqual(expected)
})

test.each([
  ['shift: { from: "06:00", to: "06:00" }', ['E_SHIFT_EMPTY']],
  ['shift: { from: "22:00", to: "06:00", perDay: 3 }', []],
  ['shift: { from: "06:00", to: "14:01", perDay: 3 }', ['E_SHIFTS_DAY']],
  ['shift: { from: "06:00", to: "14:00", perDay: 0 }', ['E_TOO_SMALL']],
  ['shift: { from: "06:00", to: "14:00", perDay: 5000 }', ['E_TOO_BIG']],
  ['shift: { from: "6", to: "14:00" }', ['E_CLOCK']],
  ['shift: { from: "06:00", to: "24:00" }', []],
  ['shift: { from: "06:00" }', ['E_MISSING']],
  ['shifts: { a: { from: "22:00", to: "24:00" }, b: { from: "00:00", to: "06:00" } }', []],
  ['shifts: { a: { from: "06:00", to: "14:00" }, b: { from: "13:00", to: "21:00" } }', ['E_SHIFTS_OVERLAP']],
  ['shifts: { a: { from: "14:00", to: "22:00" }, b: { from: "06:00", to: "15:00" } }', ['E_SHIFTS_OVERLAP']],
  ['shifts: {}', ['E_NEITHER']],
  ['breaks: []', ['E_NEITHER']],
])('%s', (day, expected) => {
  expect(codes(day)).toEqual(expected)
})
