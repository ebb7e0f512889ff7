import { expect, test } from 'vitest'
import { moneyText, monthsText, rangeText } from './moneyWords.ts'

test('money is rounded by how far it may be off', () => {
  const thin = '\u202f'
  expect(moneyText(104_949, '€')).toBe(`104${thin}949 €`)
  expect(moneyText(104_949, '€', { p10: 99_000, p50: 104_900, p90: 111_000 })).toBe(`105${thin}000 €`)
  expect([monthsText(46.88), monthsText(7.26), monthsText(null)]).toEqual(['47 months', '7.3 months', 'never'])
  expect([rangeText({ p10: 43.2, p50: 47, p90: 52.4 }, 0), rangeText({ p10: 43.2, p50: 43.2, p90: 43.3 }, 0)]).toEqual(['43 to 52', '43'])
})
