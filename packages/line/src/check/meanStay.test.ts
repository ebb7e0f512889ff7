import { expect, test } from 'vitest'
import { loopLine } from '../builder/sketchedLine.ts'
import { longestStay, meanStay } from './meanStay.ts'

const constant = (value: number) => ({ kind: 'constant', value }) as const
const work = [{ task: 0, seconds: [constant(10), constant(30), null] }]

test('over the variants that have a task there, by how often they are made', () => {
  expect(meanStay({ load: null, unload: null, work }, [3, 1, 4])).toBe(15)
  expect(meanStay({ load: null, unload: null, work }, [0, 0, 1])).toBe(0)
  // whoever is loaded there stays, with a task or without
  expect(meanStay({ load: [], unload: null, work }, [3, 1, 4])).toBe(7.5)
})

test('the longest of several stays, its release included', () => {
  const { spec } = loopLine({
    zones: 4,
    paths: [0, 1, 2, 3].map((from) => ({ from, move: 2 })),
    carriers: 2,
    stations: { A: { zone: 0, unload: 10, load: 12, release: 3 }, B: { zone: 2, work: 24 } },
    end: 60,
  })
  expect(longestStay(spec.stations, [1])).toBe(25)
  expect(longestStay([], [1])).toBe(0)
})
