import { law } from '@loopwright/line/bounds'
import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { lawInputs } from './lawInputs.ts'

const YAML = `
format: 1
name: Ten zones
question: How many?
warmup: 1 h
length: 8 h
drive: { speed: 30 m/min, reaction: 0 s }
carriers: { count: 2, length: 1 m }
loop: 10 zones of 1 m
stations:
  S1: { zone: Z01, unload: { takeOff: 0 s }, load: { place: 6 s } }
  S2: { zone: Z05, work: { fit: 6 s } }
`

/** By hand: a move takes 1 m at 0.5 m/s, 2 s, and 2 s to clear; a lap 10 × 2 + 6 + 6 = 32 s; an exchange 2 + 6 + 2 = 10 s; a hole 10 × 2 = 20 s. */
test('the three terms of a loop that can be reckoned by hand', () => {
  const { scenario, problems } = readScenario(YAML)
  if (scenario === null) throw new Error(JSON.stringify(problems))
  const table = lawInputs(scenario.line, law(scenario.line), 8 * 3600)
  expect(table.caption).toBe('The law of the loop (exact)')
  expect(table.rows.map(({ cells }) => cells)).toEqual([
    ['Lap of one carrier alone', '32 s'],
    ['Slowest exchange', '10 s at S1: 360.0 units per working hour, 2\u202f880 in the working time'],
    ['Lap of one hole', '20 s over 10 storage zones'],
    ['Too few carriers below, too little room above', '4 and 8 carriers'],
  ])
  const twice = YAML.replace('work: { fit: 6 s } }', 'unload: { off: 6 s }, load: { on: 0 s } }')
  const { scenario: two } = readScenario(twice)
  // each carrier makes a unit at both stations, so that a lap makes two
  expect(lawInputs(two!.line, law(two!.line), 8 * 3600).rows[1]!.cells[1]).toBe(
    '10 s at S1: 720.0 units per working hour, 5\u202f760 in the working time',
  )
})
