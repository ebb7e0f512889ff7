/** A small line with chance, stops and a shift, for the tests of the studies' stories. */
import { readScenario, type Scenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'

/** its text */
export const RING = `
format: 1
name: Ring
question: What does the ring make?
plan: 250 per shift
calendar:
  shift: { from: "06:00", to: "08:00", perDay: 2 }
  breaks: [{ after: 60 min, lasts: 10 min }]
  judge: second shift
drive: { speed: 30 m/min, reaction: 0 s }
carriers: { count: 4, length: 0.8 m }
loop: 10 zones of 1 m
stations:
  S1: { name: Load and unload, zone: Z01, unload: { takeOff: 3 s }, load: { place: 6 s ± 20 % } }
  S2: { name: Fit, zone: Z04, work: { fit: 15 s ± 20 % } }
  S3: { name: Test, zone: Z07, work: { test: 18 s ± 20 % } }
stops:
  jam: { at: every station, after: exponential 40 min, lasts: exponential 60 s }
  tool: { at: S3, after: exponential 40 min, lasts: exponential 2 min }
`

export const testLine = (change: (text: string) => string = (text) => text): Scenario => {
  const { scenario, problems } = readScenario(change(RING), 'ring.yaml')
  if (scenario === null) throw new Error(JSON.stringify(problems))
  return scenario
}

test('it can be read, and changed', () => {
  expect(testLine().line.stations).toHaveLength(3)
  expect(testLine((text) => text.replace('count: 4', 'count: 5')).line.carriers.count).toBe(5)
})
