import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { wholeChanges } from './wholeChanges.ts'

const person = (name: string, stations: readonly number[]) => ({ name, stations, start: stations[0]! })
const told = (line: ReturnType<typeof stationLoop>) =>
  wholeChanges(line).map(({ kind, name, step, count }) => `${kind} ${name} ${step > 0 ? '+' : '-'}${count}`)

test('carriers always; an operator more for each kind, one fewer only where somebody is left for every station', () => {
  expect(told(stationLoop())).toEqual(['carrier carriers +3', 'carrier carriers -3'])
  expect(told(stationLoop({ operators: [person('Ann', [0, 1])] }))).toContain('operator Ann +1')
  expect(told(stationLoop({ operators: [person('Ann', [0, 1])] }))).not.toContain('operator Ann -1')
  const two = stationLoop({ operators: [person('Ann', [0, 1]), person('Bob', [1, 0])] })
  expect(told(two).slice(0, 2)).toEqual(['operator Ann +2', 'operator Bob -2'])
})

test('the new operator covers the same stations under a name of its own', () => {
  const line = stationLoop({ operators: [person('Ann', [0, 1]), person('Ann 2', [2])] })
  expect(wholeChanges(line)[0]!.line.operators.at(-1)).toEqual({ name: 'Ann 3', stations: [0, 1], start: 0 })
})

test('crews up to as many as there are sources, never below one', () => {
  expect(told(stationLoop({ repairCrews: 1 })).filter((one) => one.startsWith('repair'))).toEqual([])
  const [jam] = stationLoop().breakdowns
  const two = stationLoop({ repairCrews: 1, breakdowns: [jam!, { ...jam!, name: 'other' }] })
  expect(told(two)).toContain('repair crew repair crews +1')
  expect(told({ ...two, repairCrews: 2 })).toContain('repair crew repair crews -2')
})

test('a count that cannot be is left out', () => {
  expect(told(stationLoop({ carriers: { ...stationLoop().carriers, count: 1 } }))).toEqual(['carrier carriers +1'])
})
