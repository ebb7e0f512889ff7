import { expect, test } from 'vitest'
import { lineLayers } from './lineLayers.ts'

test('an open line stands in one lane, from its entry on', () => {
  const paths = [
    { from: -1, to: 2 },
    { from: 2, to: 0 },
    { from: 0, to: 1 },
    { from: 1, to: -1 },
  ]
  expect(lineLayers(3, paths, 0)).toEqual({ row: [1, 2, 0], lane: [0, 0, 0], rows: 3, lanes: 1 })
})

test('parallel lanes stand beside each other, the merge below both', () => {
  // 0 → 1 → 3, 0 → 2 → 3, back to 0
  const paths = [
    { from: 0, to: 1 },
    { from: 0, to: 2 },
    { from: 1, to: 3 },
    { from: 2, to: 3 },
    { from: 3, to: 0 },
  ]
  const { row, lane, rows, lanes } = lineLayers(4, paths, 0)
  expect(row).toEqual([0, 1, 1, 2])
  expect([...lane].sort()).toEqual([0, 0, 0, 1])
  expect([rows, lanes]).toEqual([3, 2])
})

test('no two zones share a place', () => {
  const paths = Array.from({ length: 30 }, (_, k) => ({ from: (k * 7) % 12, to: (k * 5 + 3) % 12 })).filter(({ from, to }) => from !== to)
  const { row, lane } = lineLayers(12, paths, 0)
  expect(new Set(row.map((r, zone) => `${r} ${lane[zone]}`)).size).toBe(12)
})

test('a lane of a bypass stays clear of the long way', () => {
  // 0 → 1 → 2 → 3 and 0 → 3
  const paths = [
    { from: 0, to: 1 },
    { from: 1, to: 2 },
    { from: 2, to: 3 },
    { from: 0, to: 3 },
  ]
  expect(lineLayers(4, paths, 0).row).toEqual([0, 1, 2, 3])
})
