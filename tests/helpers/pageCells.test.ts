import { expect, test } from 'vitest'
import { cells } from './pageCells.ts'

test('every kind of cell but a run is among them, each with its own id', () => {
  expect(new Set(cells.map((cell) => cell.kind)).size).toBe(10)
  expect(new Set(cells.map((cell) => cell.id)).size).toBe(cells.length)
})
