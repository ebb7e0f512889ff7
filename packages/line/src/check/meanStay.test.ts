import { expect, test } from 'vitest'
import { meanStay } from './meanStay.ts'

const constant = (value: number) => ({ kind: 'constant', value }) as const
const work = [{ task: 0, seconds: [constant(10), constant(30), null] }]

test('over the variants that have a task there, by how often they are made', () => {
  expect(meanStay({ load: null, unload: null, work }, [3, 1, 4])).toBe(15)
  expect(meanStay({ load: null, unload: null, work }, [0, 0, 1])).toBe(0)
  // whoever is loaded there stays, with a task or without
  expect(meanStay({ load: [], unload: null, work }, [3, 1, 4])).toBe(7.5)
})
