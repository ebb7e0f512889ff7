import { describe, expect, test } from 'vitest'
import { screenedLine as figures } from '../../../../tests/helpers/screenedLine.ts'
import { rollerFindings } from './rollers.ts'
import { NOTHING_GIVEN } from './screening.ts'

const rollers = { pitch: 0.1, diameter: 0.05, rating: 50, soft: false, bedGap: null, bedStep: null, width: null }
const find = (list: readonly { id: string }[], id: string) => list.find((each) => each.id === id) as never

describe('rollers', () => {
  const of = (over: object, inputs: object = {}) =>
    rollerFindings({ ...NOTHING_GIVEN, mass: 115, ...inputs, rollers: { ...rollers, ...over } }, figures)
  test('three under the carrier, four under a soft bottom; 100 mm spacing (common practice, no source)', () => {
    expect(find(of({}), 'rollers-under')).toMatchObject({ value: 12, word: 'within guidance value' })
    expect(find(of({ pitch: 0.45 }), 'rollers-under')).toMatchObject({ value: 2, word: 'above guidance value' })
    expect(find(of({ pitch: 0.4 }), 'rollers-under')).toMatchObject({ value: 3, word: 'within guidance value' })
    expect(find(of({ pitch: 0.4, soft: true }), 'rollers-under')).toMatchObject({ word: 'above guidance value' })
    expect(find(of({ pitch: 0.4, bedGap: 0.05 }), 'rollers-gap')).toMatchObject({ value: 2, word: 'above guidance value' })
  })
  test('load on one: twice the even share with more than three, one and a half with three', () => {
    expect(find(of({}), 'rollers-load')).toMatchObject({ value: 230 / 12, word: 'within guidance value' })
    expect(find(of({ pitch: 0.4 }), 'rollers-load')).toMatchObject({ value: (115 * 1.5) / 3, word: 'above guidance value' })
  })
  test('fingers between rollers are off until the edition is checked', () => {
    expect(find(of({}), 'rollers-fingers')).toMatchObject({ value: 0.05, word: 'not checked' })
    expect(find(of({ pitch: 0.07 }, { secondHand: true }), 'rollers-fingers')).toMatchObject({ word: 'above guidance value' })
  })
  test('joints and width', () => {
    const found = of({ bedGap: 0.06, bedStep: 0.001, width: 1.3 })
    expect(['bed-gap', 'bed-step', 'bed-width'].map((id) => (find(found, id) as { word: string }).word)).toEqual([
      'above guidance value',
      'within guidance value',
      'within guidance value',
    ])
  })
})
