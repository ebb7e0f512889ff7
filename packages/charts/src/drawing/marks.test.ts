import { expect, test } from 'vitest'
import type { Mark } from './drawing.ts'
import { markPieces } from './marks.ts'
import { scaleOf } from './scale.ts'

const x = scaleOf({ from: 0, to: 10, title: '' }, 0, 200)
const y = scaleOf({ from: 0, to: 10, title: '' }, 100, 0)
/** pixels of the picture */
const WIDE = 300
const svgOf = (mark: Mark): string[] => markPieces(mark, x, y, WIDE).map(({ svg }) => svg)

test('a rule has strokes across its ends where it is asked for them', () => {
  expect(svgOf({ mark: 'rule', x: [2, 2], y: [2, 8], ink: 'whisker', ends: 3 })).toEqual([
    '<path d="M40 80L40 20"/>',
    '<path d="M37 80L43 80"/>',
    '<path d="M37 20L43 20"/>',
  ])
})

test('lines of text stand below each other, from the edge that is named', () => {
  const heights = (edge: 'top' | 'middle' | 'bottom') =>
    svgOf({ mark: 'words', x: 5, y: 5, text: ['a', 'b'], ink: 'words', edge }).map((svg) => Number(/y="([\d.]+)"/.exec(svg)![1]))
  expect(heights('middle')[1]! - heights('middle')[0]!).toBe(15)
  expect(heights('top')[0]).toBeGreaterThan(50)
  expect(heights('bottom')[1]).toBeLessThan(50)
})

test('a text without the room that it may take is left out', () => {
  const words = (room: number): Mark => ({ mark: 'words', x: 5, y: 5, text: '1 234', ink: 'words', room })
  expect([svgOf(words(5)).length, svgOf(words(1)).length]).toEqual([1, 0])
})

test('words that would reach out of the picture stand on the other side of their mark, else they are moved back into it', () => {
  const told = (at: number, width: number, text = '1 234 567', dx = 5): [number, string | undefined] => {
    const [piece] = markPieces({ mark: 'words', x: at, y: 5, text, ink: 'words', dx }, x, y, width)
    return [Number(/x="([\d.-]+)"/.exec(piece!.svg)![1]), /text-anchor="(\w+)"/.exec(piece!.svg)?.[1]]
  }
  expect(told(2, 200)).toEqual([45, undefined])
  expect(told(9.5, 200)).toEqual([185, 'end'])
  const [left] = told(9.5, 200, 'a text as long as nearly the whole picture')
  expect(left).toBeGreaterThanOrEqual(-100)
  expect(left).toBeLessThan(190)
})
