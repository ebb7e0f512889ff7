import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { runKey } from './runKey.ts'

const spec = stationLoop()

test('the same line has the same key, in whatever order its parts are named; its own number of carriers does not enter', () => {
  const turned = Object.fromEntries(Object.entries(spec).reverse()) as unknown as typeof spec
  expect(runKey(spec, 3, '1', 'rows')).toMatch(/^[0-9a-f]{64}$/)
  expect(runKey(turned, 3, '1', 'rows')).toBe(runKey(spec, 3, '1', 'rows'))
  expect(runKey({ ...spec, carriers: { ...spec.carriers, count: 5 } }, 3, '1', 'rows')).toBe(runKey(spec, 3, '1', 'rows'))
})

test('any difference gives another', () => {
  const keys = [
    runKey(spec, 3, '1', 'rows'),
    runKey(spec, 4, '1', 'rows'),
    runKey(spec, 3, '2', 'rows'),
    runKey(spec, 3, '1', 'results'),
    runKey({ ...spec, reactionSeconds: 0.1 }, 3, '1', 'rows'),
    runKey({ ...spec, tasks: ['place', 'fit', 'take'] }, 3, '1', 'rows'),
    runKey({ ...spec, breaks: [] }, 3, '1', 'rows'),
  ]
  expect(new Set(keys).size).toBe(keys.length)
})
