/** What holds for the columns of every line, whatever is added to them. */
import { expect, test } from 'vitest'
import { GENERAL_LINES } from '../../../../tests/bench/generalLines.ts'
import type { LineSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'
import type { WorkList } from '../state/lists.ts'
import { buildLine } from './build.ts'
import { handleInstant } from '../instant/instant.ts'
import { resetLine } from './start.ts'

/** Objects of the line by the way to them; what is no column of its own (the file's text, the queue, generators) is left out. */
function objectsOf(line: Line): [string, object][] {
  const found: [string, object][] = []
  const seen = new Set<unknown>([line.spec, line.queue, line.draws.streams, line.draws.samplers])
  const look = (at: string, value: unknown): void => {
    if (typeof value !== 'object' || value === null || seen.has(value)) return
    seen.add(value)
    if (!ArrayBuffer.isView(value)) {
      found.push([at, value])
      for (const [key, inner] of Object.entries(value)) look(`${at}.${key}`, inner)
    }
  }
  look('line', line)
  return found
}

/** An object of more than 155 places keeps none of them within itself, and every number in it is made anew when it is set. */
const PLACES_MAX = 60

test.each(Object.entries(GENERAL_LINES))('%s: no object of the line comes near the number of places that makes it slow', (_, make) => {
  const objects = objectsOf(buildLine(make()))
  expect(objects.length).toBeGreaterThan(20)
  expect(objects.filter(([, object]) => Object.keys(object).length > PLACES_MAX).map(([at]) => at)).toEqual([])
})

/** What is written before it is read, and so stands as a run left it. */
const SCRATCH = /\.(due|left|drawn|taskUniforms|taskRoom|outputs\.values|since)$/

function valuesOf(line: Line): Map<string, unknown> {
  return new Map(
    objectsOf(line).flatMap(([at, object]) =>
      Object.entries(object).flatMap(([key, value]): [string, unknown][] => {
        const name = `${at}.${key}`
        if (SCRATCH.test(name)) return []
        // of a list that grows and shrinks only what is in it
        if (key === 'items' && 'isIn' in object) return [[name, (value as Int32Array).slice(0, (object as unknown as WorkList).length)]]
        return ArrayBuffer.isView(value) || typeof value !== 'object' ? [[name, value]] : []
      }),
    ),
  )
}

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
  const [one, other] = [valuesOf(used), valuesOf(fresh)]
  expect(one.size).toBeGreaterThan(150)
  expect([...one.keys()].filter((name) => JSON.stringify(one.get(name)) !== JSON.stringify(other.get(name)))).toEqual([])
})
