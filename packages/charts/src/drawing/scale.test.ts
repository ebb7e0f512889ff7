import { expect, test } from 'vitest'
import { roundTicks, scaleOf } from './scale.ts'

test('values become pixels, also from above and in steps of ten', () => {
  const scale = scaleOf({ from: 0, to: 10, title: '' }, 20, 120)
  expect([scale.of('from'), scale.of(5), scale.of('to'), scale.of(20), scale.within(20)]).toEqual([20, 70, 120, 220, 120])
  expect(scaleOf({ from: 4, to: 0, title: '' }, 100, 0).of(1)).toBe(25)
  expect(scaleOf({ from: 1, to: 100, title: '', tenfold: true }, 0, 100).of(10)).toBe(50)
})

test('an axis without length, or a tenfold one from 0, is none', () => {
  expect(() => scaleOf({ from: 3, to: 3, title: '' }, 0, 1)).toThrow('an axis from 3 to 3 cannot be drawn')
  expect(() => scaleOf({ from: 0, to: 3, title: '', tenfold: true }, 0, 1)).toThrow(RangeError)
  expect(() => scaleOf({ from: 0, to: Number.NaN, title: '' }, 0, 1)).toThrow(RangeError)
})

test('ticks are round numbers within the axis', () => {
  const texts = (from: number, to: number, pieces: number) => roundTicks({ from, to, title: '' }, pieces).map(({ text }) => text)
  expect(texts(203, 365, 5)).toEqual(['250', '300', '350'])
  expect(texts(0, 0.6, 5)).toEqual(['0.0', '0.2', '0.4', '0.6'])
  expect(texts(-1, 1, 4)).toEqual(['−1.0', '−0.5', '0.0', '0.5', '1.0'])
})
