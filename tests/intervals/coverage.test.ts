import { expect, test } from 'vitest'
import { coverageOf, studiesOf } from './coverage.ts'
import { LINES } from './lines.ts'

test('of four studies of two runs, three hold plainly and two as told', () => {
  const mean = (plain: number, told: number) => ({
    runs: 2,
    plain: { mean: plain, halfWidth: 2 },
    told: { mean: told, halfWidth: 1 },
  })
  expect(coverageOf([mean(10, 10), mean(8, 9.5), mean(12, 11.5), mean(13, 8.5)], 10)).toEqual([
    {
      runs: 2,
      studies: 4,
      plainHeld: 0.75,
      toldHeld: 0.5,
      variance: expect.closeTo(1.5625 / 4.9166667, 6),
      widthMedian: 0.5,
      widthMost: 0.5,
    },
  ])
})

test('each line makes something, and its runs of a study are the beginnings of the larger one', () => {
  for (const [name, line] of Object.entries(LINES)) {
    const { means, mean } = studiesOf(line(), { studies: 1, sizes: [2, 3], seed: 'few' })
    expect([name, means.map(({ runs }) => runs)]).toEqual([name, [2, 3]])
    const [two, three] = means
    expect([name, three!.plain.mean]).toEqual([name, mean])
    expect(two!.plain.mean).toBeGreaterThan(0)
  }
})
