/** What holds for the columns of every line, whatever is added to them. */
import { expect, test } from 'vitest'
import { GENERAL_LINES } from '../../../../tests/bench/generalLines.ts'
import { differing, objectsOf, valuesOf } from '../../../../tests/helpers/columnsOf.ts'
import type { LineSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { buildLine } from './build.ts'
import { handleInstant } from '../instant/instant.ts'
import { resetLine } from './start.ts'

/** An object of more than 155 places keeps none of them within itself, and every number in it is made anew when it is set. */
const PLACES_MAX = 60

test.each(Object.entries(GENERAL_LINES))('%s: no object of the line comes near the number of places that makes it slow', (_, make) => {
  const objects = objectsOf(buildLine(make()))
  expect(objects.length).toBeGreaterThan(20)
  expect(objects.filter(([, object]) => Object.keys(object).length > PLACES_MAX).map(([at]) => at)).toEqual([])
})

function afterARun(spec: LineSpec): Line {
  const line = buildLine(spec)
  resetLine(line, 'another', 7)
  handleInstant(line)
  for (let instants = 0; instants < 20_000 && line.queue.size > 0; instants++) {
    line.now = line.queue.firstTime()
    handleInstant(line)
  }
  return line
}

test.each(Object.entries(GENERAL_LINES))('%s: set to time 0 after a run, every column stands as in a line just built', (_, make) => {
  const used = afterARun(make())
  expect(used.events).toBeGreaterThan(1_000)
  resetLine(used, 'seed', 0)
  const fresh = buildLine(make())
  resetLine(fresh, 'seed', 0)
  expect(valuesOf(used).size).toBeGreaterThan(150)
  expect(differing(valuesOf(used), valuesOf(fresh))).toEqual([])
})
