import { expect, test } from 'vitest'
import { stopParts } from './stopParts.ts'
import { stopStudy } from './stopStudy.ts'

const stops = [1, 2, 3, 4, 5].map((index) => ({
  place: 'Tester',
  cause: 'leak/hose',
  start: index * 7200,
  end: index * 7200 + 300 + 60 * index,
  line: index + 1,
}))

test('as a scenario says it, with where it comes from', () => {
  const [part] = stopParts(stopStudy(stops, { from: 0, to: 43_200, clock: 'calendar' }), 'stops.csv', () => 'S6')
  expect(part).toEqual({
    name: 'Tester leak hose',
    value: '{ at: "S6", after: exponential 8640 s, lasts: 480 s ± 19.7642 %, clock: calendar }',
    from: 'logged, stops.csv: 5 stops in 12 h, 5 repairs',
  })
})

test('what stands in is said', () => {
  expect(stopParts(stopStudy(stops.slice(0, 1), { from: 0, to: 43_200 }), 's.csv')[0]!.from).toContain('1 stop of it: too few to tell')
})
