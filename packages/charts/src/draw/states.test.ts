import { STATION_STATES } from '@loopwright/line'
import { expect, test } from 'vitest'
import { STATE_LOOKS, STATES } from './states.ts'

test('the states are those of the engine, in its order', () => expect(STATES).toEqual(STATION_STATES))

test('no letter stands for two states', () => {
  const letters = STATES.map((state) => STATE_LOOKS[state].letter)
  expect(new Set(letters).size).toBe(10)
  expect(letters.every((letter) => letter.length <= 2)).toBe(true)
})

test('the colours are those of the published set', () => {
  // Paul Tol, Colour Schemes, SRON/EPS/TN/09-002, "muted" with pale grey; values from memory
  const muted = ['#332288', '#117733', '#999933', '#88ccee', '#aa4499', '#cc6677', '#44aa99', '#ddcc77', '#882255', '#dddddd']
  expect(STATES.map((state) => STATE_LOOKS[state].light)).toEqual(muted)
})
