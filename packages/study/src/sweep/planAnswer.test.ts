import { type ChanceWord, chanceVerdict } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { planAnswer, questioned } from './planAnswer.ts'

const count = (carriers: number, successes: number, n: number, gridlocks = 0) => ({
  carriers,
  gridlocks,
  planVerdict: chanceVerdict(successes, n),
})

test('the smallest count shown to meet the plan, and what is about nine of ten or open below it', () => {
  const counts = [count(4, 2, 100), count(5, 900, 1000), count(6, 17, 20), count(7, 100, 100), count(8, 100, 100)]
  expect(planAnswer(counts)).toMatchObject({ carriers: 7, about: 5, open: [6], best: 7, settled: false })
})

test('a count that stood still is never chosen, and is told with the number of its runs that did', () => {
  const answer = planAnswer([count(4, 2, 100), count(5, 100, 100, 3), count(6, 95, 100)])!
  expect(answer).toMatchObject({ carriers: null, best: 6 })
  expect(answer.counts[1]).toMatchObject({ carriers: 5, stoodStill: 3, verdict: 'met' })
})

test('none meets it: the best chance by its lower limit, so that 19 of 20 does not beat 890 of 1000', () => {
  expect(planAnswer([count(5, 890, 1000), count(6, 19, 20)])).toMatchObject({ carriers: null, about: 5, best: 5, open: [6] })
})

test('no window met it: none is best', () => {
  expect(planAnswer([count(3, 0, 40), count(4, 0, 40)])).toMatchObject({ carriers: null, about: null, best: null, settled: true })
})

test('without a plan or a window there is no answer', () => {
  expect(planAnswer([])).toBeNull()
  expect(planAnswer([{ carriers: 3, gridlocks: 0, planVerdict: null }])).toBeNull()
})

test('the smallest that does not miss the plan is in question, with its neighbours', () => {
  const words = (...all: ChanceWord[]) => all.map((verdict, at) => ({ at, verdict }))
  const at = (...all: ChanceWord[]) => questioned(words(...all)).map((one) => one.at)
  expect(at('not met', 'not met', 'open', 'met', 'met')).toEqual([1, 2, 3])
  expect(at('met', 'met')).toEqual([0, 1])
  expect(at('not met', 'not met')).toEqual([])
})
