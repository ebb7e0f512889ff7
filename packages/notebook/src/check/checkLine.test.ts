/** Lines that the tests of the check read, with all that the reader made of them. */
import { readScenario } from '@loopwright/scenario'
import { lineFacts } from '@loopwright/study'
import { expect, test } from 'vitest'

export function read(text: string) {
  const { scenario, notes, problems } = readScenario(text, 'line.yaml')
  if (scenario === null || notes === null) throw new Error(JSON.stringify(problems))
  return { scenario, notes, problems, facts: lineFacts(scenario.line) }
}

/** With ramps, one random time, a stop and a calendar. */
export const SHIFTS = `format: 1
question: Does the small loop make 70 a shift?
name: Small loop
plan: 70 per shift
calendar:
  shift: { from: "06:00", to: "08:00", perDay: 2 }
  breaks: [{ after: 60 min, lasts: 10 min }]
  judge: second shift
drive: { speed: 12 m/min, acceleration: 0.5 m/s², reaction: 0.1 s, release: single }
carriers: { count: 4, length: 0.8 m, width: 0.8 m }
loop: 10 zones of 1 m
stations:
  A: { name: Load, zone: Z01, load: { place: 20 s } }
  B: { name: Fit, zone: Z05, work: { fit: 70 s ± 15 % } }
  C: { name: Unload, zone: Z08, unload: { take: 15 s } }
stops:
  jam: { at: B, after: exponential 60 min, lasts: exponential 2 min }
`

/** Constant times, no ramps: the law of the loop is exact. */
export const EXACT = `format: 1
question: What does the law say?
name: Exact loop
warmup: 10 min
length: 1 h
drive: { speed: 12 m/min, reaction: 0.1 s, release: single }
carriers: { count: 4, length: 0.8 m, width: 0.8 m }
loop: 10 zones of 1 m
stations:
  A: { name: Load, zone: Z01, load: { place: 20 s } }
  B: { name: Unload, zone: Z06, unload: { take: 15 s } }
`

/** From a store and back to it, by two ways. */
export const OPEN = `format: 1
question: How many?
name: Open line
warmup: 1 h
length: 8 h
drive: { speed: 15 m/min }
carriers: { count: 1, length: 1 m, start: store }
zones: { A: { length: 1.5 m, divert: free }, B: { length: 1.5 m }, C: { length: 1.5 m }, D: { length: 1.5 m } }
paths: [store > A > B > D > store, A > C > D]
stations:
  load: { zone: A, load: { place: 30 s } }
  unload: { zone: D, unload: { take: 20 s } }
`

test('they can be read', () => {
  for (const text of [SHIFTS, EXACT, OPEN]) expect(read(text).problems.filter(({ severity }) => severity === 'error')).toEqual([])
})
