import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { countFigures, figureOf, moreFigure, namedCount, planFigure, sweepFigures } from './answerFigures.ts'
import { period } from './period.ts'

const scenario = testLine()
const words = period(scenario)
const sweep = await sweepCarriers(scenario.line, { counts: [2, 3, 4], replications: 30, plan: 250 }, { seed: '1', workers: 0 })

test('the count that meets the plan is named before the one that is enough', () => {
  const answer = { ...sweep.answer!, chosen: 3, best: 4 }
  const plan = { carriers: 4, about: null, open: [], best: 4, counts: [], settled: true } as never
  expect(namedCount({ answer, planAnswer: plan })).toBe(4)
  expect(namedCount({ answer, planAnswer: null })).toBe(3)
  expect(namedCount({ answer: { ...answer, chosen: null }, planAnswer: null })).toBeNull()
})

test('the figures are those of the named count', () => {
  const answer = { ...sweep.answer!, chosen: 3, best: 4 }
  const figures = sweepFigures({ ...sweep, answer, planAnswer: null }, words)
  expect(figures[0]).toEqual({ label: 'Carriers', value: '3', sure: 'enough for nearly the most' })
  expect(figures.slice(1)).toEqual(countFigures(sweep.counts[1]!, words))
  expect(sweepFigures({ ...sweep, answer: null }, words)).toEqual([])
})

test('a count that stood still has no figures', () => expect(countFigures({ ...sweep.counts[0]!, gridlocks: 1 }, words)).toEqual([]))

test('the half-width of a figure stands with what is said of it; a number without one is told as it is', () => {
  expect(figureOf('Made', { value: '−7.8', half: '1.2' }, 'units a shift')).toEqual({
    label: 'Made',
    value: '−7.8',
    sure: '± 1.2 units a shift',
  })
  expect(figureOf('Made', { value: '330', half: null }, 'units a shift')).toEqual({ label: 'Made', value: '330', sure: 'units a shift' })
  expect(moreFigure('More', { value: '7.8', half: '1.2' }, 'units')).toEqual({ label: 'More', value: '+7.8', sure: '± 1.2 units' })
})

test('of a plan that all or none meet there is one limit', () => {
  const verdict = (share: number) => ({ share, low: 0.03, high: 0.97, method: 'exact', verdict: 'open' }) as never
  expect([0, 1].map((share) => planFigure(320, verdict(share), 'shifts').sure)).toEqual([
    'the chance is at most 97\u202f%',
    'the chance is at least 3\u202f%',
  ])
})

test('whether a plan is met in nine of ten, and how sure that is', () => {
  const verdict = { successes: 89, n: 100, share: 0.89, low: 0.87, high: 0.91, level: 0.95, method: 'exact', verdict: 'about' } as never
  expect(planFigure(320, verdict, 'shifts')).toEqual({ label: 'Plan of 320 met', value: 'about', sure: 'in 89\u202f% of shifts, 87 to 91' })
})
