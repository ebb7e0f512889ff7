import { expect, test } from 'vitest'
import { compareSentences, compareSure, type Difference, differenceSentence, differenceWords, levelWords } from './compareWords.ts'

const shift = { one: 'shift', each: 'a shift', many: 'shifts', plan: null }
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

test('each kind of difference has its sentence', () => {
  expect(say({})).toBe('“B” makes 7.8 fewer units a shift than “A” in the same random worlds (95\u202f%: 6.5 to 9.0).')
  expect(say({ mean: 7.76, low: 6.52, high: 9 })).toContain('makes 7.8 more units a shift than “A”')
  expect(say({ mean: 0.3, low: -0.94, high: 1.54, status: 'no difference shown' })).toBe(
    'No difference is shown between “B” and “A” (95\u202f%: −0.9 to 1.5 units a shift); that is not to say that they are equal.',
  )
  const none = { mean: 0, low: 0, high: 0, halfWidth: 0, sd: 0, pairingGain: null }
  expect(say({ ...none, status: 'identical in every replication' })).toContain('exactly what “A” makes')
  expect(say({ ...none, mean: 2, low: 2, high: 2, status: 'always differs by the same' })).toContain(
    '2.0 more units a shift than “A”, in every',
  )
})

test('one rounding for a difference, wherever it stands', () => {
  expect(differenceWords(difference({}))).toEqual({ size: '7.8', withHalfWidth: '−7.8 ± 1.2', low: '6.5', high: '9.0' })
  expect(differenceWords(difference({ mean: -22.4, halfWidth: 4, low: -26.4, high: -18.4 })).withHalfWidth).toBe('−22 ± 4')
  expect(differenceWords(difference({ mean: 0.31, halfWidth: 0.02, low: 0.29, high: 0.33 })).withHalfWidth).toBe('0.3 ± 0.1')
})

test('a level is never rounded up', () =>
  expect([0.95, 1 - 0.05 / 3, 0.9999].map(levelWords)).toEqual(['95\u202f%', '98.3\u202f%', '99.9\u202f%']))

test('how sure: of all pairs together; worlds that do not line up are told', () => {
  const of = (gain: number | null, halfWidth = 1.24) =>
    ({
      level: 0.95,
      lines: [{ name: 'A', units: [1, 2, 3] }],
      pairs: [{ first: 1, second: 0, difference: difference({ pairingGain: gain, halfWidth }) }],
    }) as unknown as Parameters<typeof compareSure>[0]
  expect(compareSure(of(8.44), shift).join(' ')).toMatch(/The interval holds .* Few replications.* at least 8\.4 times the replications/)
  expect(compareSure(of(0.8), shift).at(-1)).toContain('do not share their random worlds well')
  expect(compareSure(of(null, 0), shift)).toEqual(['The differences are the same in each of 3 replications: nothing random reaches them.'])
  expect([compareSentences({ ...of(1), pairs: [] }, shift), compareSure({ ...of(1), pairs: [] }, shift)]).toEqual([
    ['No answer yet: a comparison needs at least 2 replications of every line.'],
    [],
  ])
})
