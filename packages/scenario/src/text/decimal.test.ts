import fc from 'fast-check'
import { expect, test } from 'vitest'
import { complement, multiply, parseDecimal, shiftPoint, toNumber, wholeProportion } from './decimal.ts'

test('a decimal without a factor is the double that JavaScript reads (ECMAScript StringToNumber rounds to nearest, ties to even)', () => {
  const double = fc.double({ noNaN: true, noDefaultInfinity: true })
  const typed = fc
    .tuple(fc.bigInt({ min: 0n, max: 10n ** 25n }), fc.integer({ min: -340, max: 300 }))
    .map(([digits, power]) => `${digits}e${power}`)
  fc.assert(
    fc.property(
      fc.oneof(
        double.map((x) => String(x === 0 ? 0 : x)),
        typed,
      ),
      (text) => {
        expect(toNumber(parseDecimal(text)!)).toBe(Number(text))
      },
    ),
    { numRuns: 3000, seed: 1 },
  )
})

test('a factor is applied before the one rounding', () => {
  expect(toNumber(parseDecimal('78.1')!, 1n, 1000n)).toBe(0.0781)
  expect(toNumber(parseDecimal('15')!, 1n, 60n)).toBe(0.25)
  expect(toNumber(parseDecimal('0.1')!, 3n)).toBe(0.3)
  expect(0.1 * 3).not.toBe(0.3)
})

test('what is no decimal number is refused', () => {
  for (const text of ['', '1,5', '.5', '5.', '1e', 'NaN', 'Infinity', '0x10', '1_000', '--1', '1e999999999', '١'])
    expect(parseDecimal(text)).toBeNull()
  expect(toNumber(parseDecimal('1e400')!)).toBe(Number.POSITIVE_INFINITY)
})

test('products of shares are exact', () => {
  const share = (text: string) => parseDecimal(text)!
  expect(toNumber(multiply(multiply(share('0.4'), complement(share('0.2'))), complement(share('0.3'))))).toBe(0.224)
  expect(0.4 * (1 - 0.2) * (1 - 0.3)).not.toBe(0.224)
  expect(wholeProportion(['0.4', '0.3', '0.2', '0.1', '0'].map(share))).toEqual([4n, 3n, 2n, 1n, 0n])
  expect(wholeProportion(['25', '1e2'].map(share))).toEqual([1n, 4n])
})

test('a moved point reads back', () => {
  expect(['0.6583', '1', '0', '100', '0.05', '123.456'].map((text) => shiftPoint(Number(text), 2))).toEqual([
    '65.83',
    '100',
    '0',
    '10000',
    '5',
    '12345.6',
  ])
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e30, noNaN: true }), (x) => {
      const { digits, scale } = parseDecimal(shiftPoint(x, 2))!
      expect(toNumber({ digits, scale: scale + 2 })).toBe(x === 0 ? 0 : x)
    }),
    { numRuns: 2000, seed: 2 },
  )
})
