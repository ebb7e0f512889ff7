import { describe, expect, test } from 'vitest'
import { compareWith, type Evidence, type Guidance } from './finding.ts'

const guidance = (side: Guidance['side'], evidence: Evidence = 'stated in the source'): Guidance => ({
  value: 100,
  upTo: side === 'between' ? 200 : null,
  side,
  source: 'a table',
  edition: '2016',
  evidence,
})
const of = (value: number | null, against: Guidance | null, permitted = { secondHand: false, fromMemory: false }) =>
  compareWith({ id: 'a', topic: 't', what: 'w', value, unit: 'N', guidance: against, assumptions: [], measure: 'm' }, permitted)

test.each([
  ['at most', 80, 'within guidance value', 0.2],
  ['at most', 100, 'within guidance value', 0],
  ['at most', 125, 'above guidance value', -0.25],
  ['at least', 125, 'within guidance value', 0.25],
  ['at least', 80, 'above guidance value', -0.2],
  ['between', 150, 'within guidance value', 0.25],
  ['between', 90, 'above guidance value', -0.1],
  ['between', 220, 'above guidance value', -0.1],
] as const)('%s 100: %d is %s', (side, value, word, margin) => {
  const found = of(value, guidance(side))
  expect(found.word).toBe(word)
  expect(found.margin).toBeCloseTo(margin, 12)
})

describe('what nobody has checked is off unless asked for', () => {
  test('second-hand quotes and values from memory', () => {
    expect(of(80, guidance('at most', 'second-hand quote, check the edition')).word).toBe('not checked')
    expect(of(80, guidance('at most', 'from memory')).why).toContain('from memory')
    expect(of(80, guidance('at most', 'from memory'), { secondHand: true, fromMemory: false }).word).toBe('not checked')
    expect(of(80, guidance('at most', 'from memory'), { secondHand: false, fromMemory: true }).word).toBe('within guidance value')
  })
  test('nothing is compared without a figure, without a value, or with a reason against it', () => {
    expect([of(null, guidance('at most')).why, of(80, null).why]).toEqual(['the figure is not known', 'there is no value to compare with'])
    const parts = {
      id: 'a',
      topic: 't',
      what: 'w',
      value: 80,
      unit: 'N',
      guidance: guidance('at most'),
      assumptions: [],
      measure: 'm',
    } as const
    expect(compareWith({ ...parts, why: 'the floor slopes' }, { secondHand: true, fromMemory: true })).toMatchObject({
      word: 'not checked',
      why: 'the floor slopes',
      margin: null,
    })
  })
})
