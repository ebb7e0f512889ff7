import { describe, expect, test } from 'vitest'
import type { LineSpec, StationSpec } from '../spec.ts'
import { dutyLaps } from './dutyLaps.ts'
import { constant, givenLoop, station } from '../../../../tests/helpers/boundLoops.ts'

describe('duties of a lone carrier', () => {
  const task = (index: number, ...seconds: (number | null)[]) => ({
    task: index,
    seconds: seconds.map((one) => (one === null ? null : constant(one))),
  })
  const loop = (stations: StationSpec[]): LineSpec => ({ ...givenLoop(6, [], 1, 1), stations, variants: ['a', 'b'], tasks: ['x', 'y'] })
  const seconds = (spec: LineSpec, variant: number): number[] => dutyLaps(spec, variant).visits.map((visit) => visit.workSeconds)

  test('empty carriers pass stations between unload and load', () => {
    const spec = loop([
      station(1, { load: [] }),
      station(2, { work: [task(0, 10, 10)] }),
      station(3, { unload: [] }),
      station(4, { work: [task(1, 7, 7)] }),
    ])
    expect(seconds(spec, 0)).toEqual([0, 0, 10, 0, 0, 0])
    expect(dutyLaps(spec, 0).units).toBe(1)
  })

  test('a task is done once, at the first station that has it', () => {
    const spec = loop([
      station(1, { load: [] }),
      station(2, { work: [task(0, 10, null)] }),
      station(4, { work: [task(0, 12, 12)] }),
      station(5, { unload: [] }),
    ])
    expect(seconds(spec, 0)).toEqual([0, 0, 10, 0, 0, 0])
    expect(seconds(spec, 1)).toEqual([0, 0, 0, 0, 12, 0])
  })

  test('a product that nobody takes off goes round without work', () => {
    const spec = loop([station(1, { load: [] }), station(2, { work: [task(0, 10, 10)] })])
    const laps = dutyLaps(spec, 0)
    expect(laps).toMatchObject({ laps: 1, units: 0 })
    expect(laps.visits.some((visit) => visit.duty)).toBe(false)
  })

  test('two loads and two unloads make two products a lap', () => {
    const spec = loop([station(0, { load: [] }), station(1, { unload: [] }), station(3, { load: [] }), station(5, { unload: [] })])
    expect(dutyLaps(spec, 0)).toMatchObject({ laps: 1, units: 2 })
  })

  test('an unload task that the variant does not have leaves the product on the carrier', () => {
    const spec = loop([station(1, { load: [] }), station(3, { unload: [task(0, 5, null)] })])
    expect(dutyLaps(spec, 0).units).toBe(1)
    expect(dutyLaps(spec, 1).units).toBe(0)
  })
})
