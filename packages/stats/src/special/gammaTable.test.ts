import { expect, test } from 'vitest'
import { gammaQuantile } from './gammaQuantile.ts'
import { gammaTable } from './gammaTable.ts'

test('a table gives what solving gives, to 1e-9, from the last double above 0 to the last below 1', () => {
  for (const shape of [0.5, 0.7, 1, 2.3, 9, 40, 400, 10_000]) {
    const table = gammaTable(shape)
    let worst = 0
    const compare = (p: number): void => {
      worst = Math.max(worst, Math.abs(table(p) / gammaQuantile(p, shape) - 1))
    }
    for (let n = 1; n < 4000; n++) compare(n / 4000)
    for (let n = 1; n < 54; n++) for (const part of [1, 0.83, 0.61]) compare(part * 2 ** -n)
    for (let n = 2; n < 54; n++) compare(1 - 2 ** -n)
    expect(worst, `shape ${shape}`).toBeLessThan(1e-9)
  }
})

test('with shape 1 it is the exponential; shapes beyond the table are solved for', () => {
  const table = gammaTable(1)
  for (const p of [1e-12, 0.02, 0.5, 0.98, 1 - 1e-9]) expect(Math.abs(table(p) / -Math.log1p(-p) - 1)).toBeLessThan(1e-9)
  expect(gammaTable(0.2)(0.3)).toBe(gammaQuantile(0.3, 0.2))
  expect(gammaTable(2e4)(0.3)).toBe(gammaQuantile(0.3, 2e4))
  expect(() => gammaTable(0)).toThrow('the shape is 0')
})
