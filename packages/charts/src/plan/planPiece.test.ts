import { expect, test } from 'vitest'
import { headingAt, middleOf, type Piece, partOf, pointAt } from './planPiece.ts'

/** a quarter of a circle of 2 m to the right, begun to the right */
const bend: Piece = { from: { x: 0, y: 0 }, heading: 0, length: Math.PI, radius: 2 }

test('a bend to the right ends a radius ahead and a radius to the right, turned by a quarter', () => {
  const end = pointAt(bend, bend.length)
  expect(end.x).toBeCloseTo(2, 12)
  expect(end.y).toBeCloseTo(2, 12)
  expect(headingAt(bend, bend.length)).toBeCloseTo(Math.PI / 2, 12)
})

test('one to the left is its mirror image', () => {
  const end = pointAt({ ...bend, radius: -2 }, bend.length)
  expect(end.x).toBeCloseTo(2, 12)
  expect(end.y).toBeCloseTo(-2, 12)
})

test('its left side is the longer one where it turns right', () => {
  const at = pointAt(bend, bend.length, 1)
  expect(at.x).toBeCloseTo(3, 12)
  expect(at.y).toBeCloseTo(2, 12)
})

test('a part begins and ends on the whole', () => {
  const part = partOf(bend, 1, 2.5)
  const [whole, own] = [pointAt(bend, 2.5), pointAt(part, 1.5)]
  expect(own.x).toBeCloseTo(whole.x, 12)
  expect(own.y).toBeCloseTo(whole.y, 12)
})

test('the middle of a straight and a bend lies where half the length is gone', () => {
  const straight: Piece = { from: { x: -1, y: 0 }, heading: 0, length: 1, radius: null }
  expect(middleOf([straight, bend]).heading).toBeCloseTo((Math.PI - 1) / 4, 12)
})
