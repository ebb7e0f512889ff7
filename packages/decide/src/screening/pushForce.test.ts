import { describe, expect, test } from 'vitest'
import { pushFindings, rollingForce, startingForce } from './pushForce.ts'
import { NOTHING_GIVEN } from './screening.ts'

const push = {
  rolling: 0.02,
  starting: 0.03,
  speed: 0.25,
  startSeconds: 1,
  distance: 1.5,
  handsKnuckleToShoulder: true,
  evenFloor: true,
  noTrapping: true,
  pushesPerUnit: null,
}
const of = (over: object = {}, mass: number | null = 115) => pushFindings({ ...NOTHING_GIVEN, mass, push: { ...push, ...over } })
const byId = (id: string, over: object = {}, mass?: number | null) => of(over, mass).find((each) => each.id === id)!

test('the worked example of the trade: 115 kg at 0.03 are 34 N, and about 63 N to reach 0.25 m/s in 1 s', () => {
  expect(Math.round(rollingForce(115, 0.03))).toBe(34)
  expect(Math.round(startingForce(115, 0.03, 0.25, 1))).toBe(63)
})

describe('against the figures of HSE L23: 200 and 150 N to start, 100 and 70 N to keep moving', () => {
  test('within, with the conditions as assumptions', () => {
    const found = byId('push-start-women')
    expect(found).toMatchObject({ word: 'within guidance value', guidance: { value: 150, source: expect.stringContaining('HSE L23') } })
    expect(found.margin).toBeCloseTo(1 - 62.6 / 150, 2)
    expect(found.assumptions).toContain('hands between knuckle and shoulder')
  })
  test('above for women and within for men, at 160 N and at 80 N', () => {
    const heavy = { starting: 0.05, speed: 0.5, startSeconds: 1 }
    // 160 N = m · (9.81 · 0.05 + 0.5)
    const mass = 160 / (9.81 * 0.05 + 0.5)
    expect(byId('push-start-women', heavy, mass).word).toBe('above guidance value')
    expect(byId('push-start-men', heavy, mass).word).toBe('within guidance value')
    const rolling = 80 / 9.81 / 0.05
    expect(byId('push-keep-women', { rolling: 0.05 }, rolling).word).toBe('above guidance value')
    expect(byId('push-keep-men', { rolling: 0.05 }, rolling).word).toBe('within guidance value')
  })
  test.each([
    [{ distance: 25 }, 'the figures hold to about 20 m only, and it is pushed 25 m'],
    [{ evenFloor: false }, 'the figures hold only on an even floor'],
    [{ handsKnuckleToShoulder: false }, 'the figures hold only with the hands between knuckle and shoulder'],
    [{ noTrapping: false }, 'the figures hold only where nobody can be trapped, and with room to move'],
    [{ evenFloor: null, distance: null }, 'the figures hold under conditions, and nothing is said of the distance, the floor'],
  ])('not checked where a condition fails or is not said: %j', (over, why) => {
    for (const found of of(over).filter(({ id }) => !id.includes('own')))
      expect(found).toMatchObject({ word: 'not checked', why, margin: null })
  })
})

test('the tables of Snook & Ciriello and ISO 11228-2 are asked for, never told', () => {
  const found = byId('push-own-startForce')
  expect(found).toMatchObject({ word: 'not checked', guidance: null })
  expect(found.why).toContain('ownCopy: startForce:')
  const own = pushFindings({ ...NOTHING_GIVEN, mass: 115, push, ownCopy: [{ limit: 'startForce', value: 60, source: 'my copy' }] })
  expect(own.find(({ id }) => id === 'push-own-startForce')).toMatchObject({
    word: 'above guidance value',
    guidance: { source: 'my copy' },
  })
})

test('where nobody pushes there is nothing; without a mass nothing is compared', () => {
  expect(pushFindings(NOTHING_GIVEN)).toEqual([])
  expect(of({}, null).every(({ word }) => word === 'not checked')).toBe(true)
})
