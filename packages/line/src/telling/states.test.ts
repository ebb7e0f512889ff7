import { expect, test } from 'vitest'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from './result.ts'
import * as states from './states.ts'

test('every state that is told has a number of its own, by kind, in the order of the list', () => {
  const numbers = (kind: string): number[] => Object.entries(states).flatMap(([name, number]) => (name.startsWith(kind) ? [number] : []))
  const upTo = (count: number): number[] => Array.from({ length: count }, (_, k) => k)
  for (const [kind, list] of [
    ['S_', STATION_STATES],
    ['Z_', ZONE_STATES],
    ['C_', CARRIER_STATES],
  ] as const) {
    expect(numbers(kind).sort((a, b) => a - b)).toEqual(upTo(list.length))
  }
  expect(STATION_STATES[states.S_NO_RECEIVER]).toBe('waiting for receiver')
  expect(ZONE_STATES[states.Z_VACATING]).toBe('vacating')
  expect(CARRIER_STATES[states.C_EMPTY]).toBe('waiting empty')
})
