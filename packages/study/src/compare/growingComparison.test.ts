import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { withCarriers } from '../change/withCarriers.ts'
import type { CompareResult } from './comparison.ts'
import { compareLines } from './compareLines.ts'
import { growingComparison } from './growingComparison.ts'

const base = stationLoop()
const two = withCarriers(base, 2)
const lines = [
  { name: 'three', line: base, plan: 100 },
  { name: 'two', line: two, plan: 100 },
]

test('each stage has the numbers of a comparison of as many replications, also where a line is known already', async () => {
  const growing = growingComparison({ seed: 'g' })
  const told: { result: CompareResult; last: boolean }[] = []
  await growing.compare([lines[0]!, { ...lines[1]!, line: withCarriers(base, 1) }], { stages: [7] }, {})
  await growing.compare(lines, { stages: [2, 5, 12] }, { onStage: (result, last) => told.push({ result, last }) })
  expect(told.map(({ last }) => last)).toEqual([false, false, true])
  for (const { result } of told)
    expect(result).toEqual(await compareLines(lines, { replications: result.replications }, { seed: 'g', workers: 0 }))
})

test('a stop is told by silence, and what was run is not run again', async () => {
  const growing = growingComparison({ seed: 'g' })
  const stop = new AbortController()
  const told: number[] = []
  await growing.compare(
    lines,
    { stages: [3, 500] },
    {
      onStage: ({ replications }) => {
        told.push(replications)
        stop.abort()
      },
      signal: stop.signal,
    },
  )
  expect(told).toEqual([3])
  await growing.compare(
    lines,
    { stages: [4] },
    { onStage: ({ replications, lines: [first] }) => told.push(replications, first!.units.length) },
  )
  expect(told).toEqual([3, 4, 4])
})

test('what cannot be compared is refused as a comparison refuses it', async () => {
  await expect(growingComparison({ seed: 'g' }).compare(lines, { stages: [1] }, {})).rejects.toThrow('at least 2 replications, not 1')
  await expect(growingComparison({ seed: 'g' }).compare(lines.slice(1), { stages: [2] }, {})).rejects.toThrow('2 to 200 lines, not 1')
})
