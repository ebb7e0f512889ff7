import { expect, test } from 'vitest'
import { smallLoop, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { resetLine } from '../build/start.ts'
import { handleInstant } from '../instant/instant.ts'
import { areQuick } from './quickTogether.ts'
import { makeQuick } from './quickZones.ts'

/** Two carriers of a loop of six zones, both due at one instant: how many timers are, and whether that is quick. */
function together(at: number, wish: Partial<Wish>): [number, boolean] {
  const line = buildLine(smallLoop({ zones: 6, start: [0, 3], ...wish }))
  resetLine(line, 'a', 0)
  handleInstant(line)
  while (line.queue.firstTime() < at) {
    line.now = line.queue.firstTime()
    handleInstant(line)
  }
  line.now = at
  let count = 0
  while (line.queue.firstTime() === at) line.slots.due[count++] = line.queue.pop()
  return [count, areQuick(line, makeQuick(line)!, count)]
}

test('two looks at one instant are quick, and so are two rests where no station is', () => {
  expect(together(5, {})).toEqual([2, true])
  expect(together(4, { move: 4, clear: 4 })).toEqual([2, true])
})

test('they are not where one comes to a station, or a stop holds the zone before them', () => {
  expect(together(4, { move: 4, clear: 4, stations: [{ at: 1, load: 5 }] })).toEqual([2, false])
  const stop = { name: 'jam', clock: 'calendar', after: 4, repair: 9 } as const
  expect(together(5, { stops: [{ ...stop, on: { kind: 'zone', index: 2 } }] })).toEqual([2, false])
})
