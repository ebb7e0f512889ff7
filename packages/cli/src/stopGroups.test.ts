import { expect, test } from 'vitest'
import { mixGroups, stopGroups } from './stopGroups.ts'

test('what one entry of the file made is one group; short stops come last', () => {
  const breakdowns = ['shortStop S1', 'shortStop S2', 'testFault', 'jam Z01', 'jam Z02', 'lift Z09'].map((name) => ({ name })) as never
  const shortStops = ['shortStop S1', 'shortStop S2'].map((name) => ({ name })) as never
  expect(stopGroups({ breakdowns }, { shortStops })).toEqual([
    { name: 'testFault', sources: ['testFault'] },
    { name: 'jam', sources: ['jam Z01', 'jam Z02'] },
    { name: 'lift Z09', sources: ['lift Z09'] },
    { name: 'shortStop', sources: ['shortStop S1', 'shortStop S2'] },
  ])
})

test('variants as written, and options', () => {
  const variants = [
    { variant: 'small', options: [] },
    { variant: 'small', options: ['kit'] },
    { variant: 'large', options: ['kit'] },
  ] as never
  expect(mixGroups({ variants, options: ['kit'] })).toEqual([
    { name: 'small', variants: [0, 1] },
    { name: 'large', variants: [2] },
    { name: 'kit', variants: [1, 2] },
  ])
})
