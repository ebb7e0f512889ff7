import { chanceVerdict } from '@loopwright/stats'
import type { CompareResult } from '@loopwright/study/compare'
import { expect, test } from 'vitest'
import {
  compareSentences,
  compareSure,
  type Difference,
  differenceFigure,
  differenceSentence,
  differenceWords,
  levelWords,
  pairingSentence,
} from './compareWords.ts'

const shift = { one: 'shift', each: 'a shift', many: 'shifts', plan: null, line: 'loop', named: null } as const
const difference = (part: Partial<Difference>): Difference => ({
  n: 30,
  mean: -7.76,
  sd: 3,
  level: 0.95,
  halfWidth: 1.24,
  low: -9,
  high: -6.52,
  pairingGain: 8.4,
  status: 'difference shown',
  ...part,
})
const say = (part: Partial<Difference>) => differenceSentence('B', 'A', difference(part), shift)

test('more has a plus sign, unless it rounds to 0', () => {
  const value = (part: Partial<Difference>) => differenceFigure('B', difference(part), 'units a shift')
  expect(value({ mean: 7.76 })).toEqual({ label: 'B', value: '+7.8', sure: '± 1.2 units a shift' })
  expect(value({}).value).toBe('−7.8')
  expect(value({ mean: 0.01 }).value).toBe('0.0')
  expect(value({ mean: 2, halfWidth: 0 })).toEqual({ label: 'B', value: '+2', sure: 'units a shift' })
})

test('each kind of difference has its sentence', () => {
  expect(say({})).toBe('“B” makes 7.8 fewer units a shift than “A” (95\u202f%: 6.5 to 9.0).')
  expect(say({ mean: 7.76, low: 6.52, high: 9 })).toContain('makes 7.8 more units a shift than “A”')
  expect(say({ mean: 0.3, low: -0.94, high: 1.54, status: 'no difference shown' })).toBe(
    'No difference is shown between “B” and “A” (95\u202f%: −0.9 to 1.5 units a shift); that is not to say that they are equal.',
  )
  const none = { mean: 0, low: 0, high: 0, halfWidth: 0, sd: 0, pairingGain: null }
  expect(say({ ...none, status: 'identical in every replication' })).toContain('exactly what “A” makes')
  expect(say({ ...none, mean: 2, low: 2, high: 2, status: 'always differs by the same' })).toContain(
    '2 more units a shift than “A”, in each of the shifts',
  )
})

test('one rounding for a difference, wherever it stands', () => {
  expect(differenceWords(difference({}))).toEqual({ size: '7.8', withHalfWidth: '−7.8 ± 1.2', low: '6.5', high: '9.0' })
  expect(differenceWords(difference({ mean: -22.4, halfWidth: 4, low: -26.4, high: -18.4 })).withHalfWidth).toBe('−22 ± 4')
  expect(differenceWords(difference({ mean: 0.31, halfWidth: 0.02, low: 0.29, high: 0.33 })).withHalfWidth).toBe('0.3 ± 0.1')
})

test('a level is never rounded up', () =>
  expect([0.95, 1 - 0.05 / 3, 0.9999].map(levelWords)).toEqual(['95\u202f%', '98.3\u202f%', '99.9\u202f%']))

const compared = (gain: number | null, halfWidth = 1.24) =>
  ({
    level: 0.95,
    lines: [{ name: 'A', units: [1, 2, 3], mean: { mean: 100, halfWidth: 2 } }],
    pairs: [{ first: 1, second: 0, difference: difference({ pairingGain: gain, halfWidth }) }],
  }) as unknown as CompareResult
const sure = (gain: number | null, halfWidth?: number): string[] => compareSure(compared(gain, halfWidth), shift)

test('how sure: of all pairs together, and what the same shifts were worth', () => {
  expect(sure(8.44)).toEqual([
    'Every line met the same 3 simulated shifts: the same products, task times and stops.',
    'The interval holds the true difference in 95\u202f% of such studies; more simulated shifts narrow it. With as few as 3 shifts the intervals are rough, and what is rare may not be among them: 30 are usual.',
    'Independent runs would need at least 8.4 times as many shifts for intervals as narrow.',
  ])
  expect(sure(1.02)).toHaveLength(2)
  expect(sure(0.8)).toHaveLength(2)
  expect(sure(0.5).at(-1)).toContain('do not share their chance events well')
  // so few pairs tell nothing of what their pairing is worth
  expect(pairingSentence([difference({ n: 5, pairingGain: 8.44 })], shift)).toEqual([])
  expect(sure(null, 0)).toEqual([
    'Every line met the same 3 simulated shifts: the same products, task times and stops.',
    'The difference is the same in each of them.',
  ])
  const { pairs, ...rest } = compared(1)
  const several = { ...rest, pairs: [0, 1, 2].map(() => ({ ...pairs[0]!, difference: difference({ level: 1 - 0.05 / 3 }) })) }
  expect(compareSure(several, shift)[1]).toContain('are at 98.3\u202f% each, so that all of them hold in 95\u202f% of such studies')
})

test('without two replications there is no answer, and nothing to be sure of', () => {
  const none = { ...compared(1), pairs: [] }
  expect(compareSentences(none, shift)).toEqual(['No answer yet: a comparison needs at least 2 simulated shifts of every line.'])
  expect(compareSure(none, shift)).toEqual([])
})

test('the plan comes first: once by its number where all lines have the same, each by its own where not', () => {
  const line = (name: string, plan: number | null, met: number) => ({
    name,
    plan,
    units: [],
    planVerdict: plan === null ? null : chanceVerdict(met, 30),
  })
  const first = (...lines: ReturnType<typeof line>[]): string[] =>
    compareSentences({ ...compared(1), lines } as unknown as CompareResult, shift).slice(0, -1)
  expect(first(line('A', 250, 30), line('B', 250, 0)).map((said) => said.replace(/met .*/, 'met …'))).toEqual([
    'With “A” the plan of 250 is met …',
    'With “B” it is met …',
  ])
  expect(first(line('A', 250, 30), line('B', 260, 0))[1]).toMatch(/^With “B” the plan of 260 is met in none of 30 shifts simulated/)
  expect(first(line('A', null, 0), line('B', 260, 0))).toHaveLength(1)
  expect(first(line('A', null, 0), line('B', null, 0))).toEqual([])
})
