import { stream } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { type Rates, tooOften } from './tooOften.ts'

const RATES: Rates = { promised: 0.05, found: 0.2, falseAlarm: 1e-6, missed: 0.01 }

/** How many of 200 checks of something that goes wrong so often say so, and by how many trials each. */
async function checked(rate: number): Promise<{ said: number; trials: number }> {
  let [said, trials] = [0, 0]
  for (let check = 0; check < 200; check += 1) {
    const next = stream('too often', check, 'trials')
    const isWrong = async (): Promise<boolean> => {
      trials += 1
      return next() < rate
    }
    if (await tooOften(isWrong, RATES)) said += 1
  }
  return { said, trials: trials / 200 }
}

// exactly, by the distribution of the sum: 1e-6 and 0.9905, by 50 and 101 trials on average; ten or more of 200 missed: 2e-5
test('what keeps its promise is never said to break it, and what is to be found is found, by about a hundred trials', async () => {
  expect((await checked(0.05)).said).toBe(0)
  expect((await checked(0.2)).said).toBeGreaterThan(190)
  expect((await checked(0.2)).trials).toBeLessThan(150)
})

test('what never goes wrong takes 27 trials, what always does takes ten', async () => {
  const tried: number[] = []
  expect(await tooOften(async (trial) => tried.push(trial) === 0, RATES)).toBe(false)
  expect(tried).toHaveLength(27)
  expect(await tooOften(async (trial) => tried.push(trial) > 0, RATES)).toBe(true)
  expect(tried).toHaveLength(37)
})
