import { pairedDifference } from '@loopwright/stats/worlds'
import { expect, test } from 'vitest'
import { compareLines } from './compareLines.ts'
import { replicate } from '../runs/replicate.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { withCarriers } from '../change/withCarriers.ts'

const base = stationLoop()
const named = (name: string, line = base) => ({ name, line, plan: 100 })
const request = { replications: 12 }
const here = { seed: 'c', workers: 0 }

test('the difference is that of the runs themselves, world by world', async () => {
  const two = withCarriers(base, 1)
  const result = await compareLines([named('three'), named('one', two)], request, here)
  const runs = await Promise.all([base, two].map((line) => replicate(line, request, here)))
  const units = runs.map((each) => each.map((run) => run.output))
  expect(result.lines.map((line) => line.units)).toEqual(units)
  expect(result.pairs).toEqual([{ first: 1, second: 0, difference: pairedDifference(units[1]!, units[0]!) }])
  expect(result.pairs[0]!.difference.status).toBe('difference shown')
  expect(result.partial).toBe(false)
})

test('a line against itself is identical in every replication, without an interval', async () => {
  const result = await compareLines([named('a'), named('b')], request, here)
  expect(result.pairs[0]!.difference).toMatchObject({ status: 'identical in every replication', mean: 0, halfWidth: 0, pairingGain: null })
})

test('three lines: three pairs, each at a level by which all hold together', async () => {
  const result = await compareLines([named('a'), named('b', withCarriers(base, 2)), named('c', withCarriers(base, 1))], request, here)
  expect(result.pairs.map(({ difference }) => difference.level)).toEqual([1, 2, 3].map(() => 1 - 0.05 / 3))
})

test('more than ten lines: each beside the first, at a level by which all hold together', async () => {
  const lines = Array.from({ length: 12 }, (_, index) => named(`line ${index}`, withCarriers(base, 1 + (index % 6))))
  const { pairs } = await compareLines(lines, { replications: 3 }, here)
  expect(pairs.map(({ first, second }) => [first, second])).toEqual(Array.from({ length: 11 }, (_, index) => [index + 1, 0]))
  expect(new Set(pairs.map(({ difference }) => difference.level))).toEqual(new Set([1 - 0.05 / 11]))
})

test('windows that differ are refused, and the first difference is named', async () => {
  const longer = stationLoop({ window: { warmupSeconds: 3600, endSeconds: 9000 } })
  await expect(compareLines([named('a'), named('b', longer)], request, here)).rejects.toThrow('different windows (7200 and 9000)')
  await expect(compareLines([named('a')], request, here)).rejects.toThrow('2 to 200 lines, not 1')
  await expect(compareLines([named('a'), named('b')], { replications: 1 }, here)).rejects.toThrow('at least 2 replications')
})
