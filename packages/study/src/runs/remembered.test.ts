import { expect, test } from 'vitest'
import { perCarriers, perKey } from './remembered.ts'
import type { RunKind } from './task.ts'

const kind: RunKind = { line: 0, carriers: 4, seed: '1', want: 'rows' }

test('is worked out once for what is the same, and again for what is not', () => {
  const asked: RunKind[] = []
  const chunkOf = perCarriers((one) => asked.push(one))
  expect([chunkOf(kind), chunkOf({ ...kind, seed: '2' }), chunkOf({ ...kind, carriers: 5 }), chunkOf({ ...kind, line: 1 })]).toEqual([
    1, 1, 2, 3,
  ])
  const keyOf = perKey((one) => asked.push(one))
  expect([keyOf(kind), keyOf({ ...kind }), keyOf({ ...kind, seed: '2' }), keyOf({ ...kind, want: 'results' })]).toEqual([4, 4, 5, 6])
})

test('what is nothing is remembered, too', () => {
  let asked = 0
  const none = perKey(() => {
    asked += 1
    return undefined
  })
  none(kind)
  none(kind)
  expect(asked).toBe(1)
})
