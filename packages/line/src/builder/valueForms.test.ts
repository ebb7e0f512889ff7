import { expect, test } from 'vitest'
import { createReport } from './report.ts'
import { either, type Form, isText, list, named, number, orElse, record, refuseOther, text, word } from './valueForms.ts'

function read(form: Form, value: unknown): { readonly value: unknown; readonly told: string[] } {
  const report = createReport()
  const found = form(report, 'at', value)
  return { value: found, told: report.problems.map(({ path, message }) => `${path}: ${message}`) }
}

test('what has the form is handed on as it is', () => {
  for (const value of [3, Number.NaN]) expect(read(number, value)).toEqual({ value, told: [] })
  expect(read(word('low', 'high'), 'low')).toEqual({ value: 'low', told: [] })
  expect(read(list(text), ['a', 'b'])).toEqual({ value: ['a', 'b'], told: [] })
  expect(read(either(isText, text, number), 3)).toEqual({ value: 3, told: [] })
})

test('what has not is told and left out', () => {
  expect(read(number, '3')).toEqual({ value: undefined, told: ['at: found the text "3"'] })
  expect(read(word('low', 'high'), 'lo')).toEqual({ value: undefined, told: ['at: "lo" cannot stand here'] })
  expect(read(list(text), ['a', 2, 'c'])).toEqual({ value: ['a', 'c'], told: ['at[1]: found the number 2'] })
  expect(read(named(number), { a: 1, b: true, c: undefined })).toEqual({ value: { a: 1 }, told: ['at.b: found "true"'] })
  expect(read(orElse(1, number), null)).toEqual({ value: 1, told: ['at: found nothing'] })
})

test('of a record what must be stands there in any case, and what is not known does not', () => {
  const form = record<{ name: string; size: number }>({ name: text, size: number }, { name: ['a name', '?'] })
  expect(read(form, { size: 3, sise: 4 })).toEqual({
    value: { name: '?', size: 3 },
    told: ['at.sise: there is no key "sise" here', 'at.name: "name" is missing'],
  })
  expect(read(form, 'big')).toEqual({ value: { name: '?' }, told: ['at: found the text "big"'] })
})

test('what is no record can be refused at once', () => {
  expect(() => refuseOther('change', {})).not.toThrow()
  expect(() => refuseOther('change', null)).toThrow('change: found nothing; write a set of keys')
})
