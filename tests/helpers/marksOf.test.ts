import { expect, test } from 'vitest'
import type { Drawing } from '../../packages/charts/src/drawing/drawing.ts'
import { marksOf, textsOf } from './marksOf.ts'

test('marks are found by their kind', () => {
  const drawing: Drawing = {
    heightPixels: 1,
    across: { from: 0, to: 1, title: '' },
    up: { from: 0, to: 1, title: '' },
    marks: [
      { mark: 'dot', x: 0, y: 1, ink: 'dot' },
      { mark: 'words', x: 0, y: 0, text: ['a', 'b'], ink: 'words' },
    ],
  }
  expect(marksOf({ drawing }, 'dot')).toEqual([drawing.marks[0]])
  expect(textsOf({ drawing })).toEqual(['a', 'b'])
})
