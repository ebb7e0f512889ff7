import type { LineSpec } from '@loopwright/line'
import { expect, test } from 'vitest'
import { lossCauses } from './lossCauses.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const base = stationLoop()
const twoKinds = {
  ...base,
  variants: ['short', 'long'],
  mix: { kind: 'random', shares: [3, 1] } as const,
  stations: base.stations.map((station) => ({
    ...station,
    ...Object.fromEntries(
      (['unload', 'load', 'work'] as const).map((duty) => [
        duty,
        station[duty]?.map((task) => ({ ...task, seconds: [task.seconds[0]!, { kind: 'constant', value: 60 } as const] })) ?? null,
      ]),
    ),
  })),
}

test.each([base, twoKinds])('taking a cause out twice is the same, alone and after all before it', (line) => {
  let now = line
  for (const { without } of lossCauses(line, { bestCarriers: 4 })) {
    expect(without(without(line))).toEqual(without(line))
    now = without(now) as typeof now
    expect(without(now)).toEqual(now)
  }
})

test('the causes in their order, the constraint by its name', () => {
  expect(lossCauses(base).map(({ name }) => name)).toEqual([
    'jam',
    'breaks',
    'exchange at B',
    'spread of task times',
    'shortage of carriers',
  ])
})

test('a cause that the line has nothing of is none', () => {
  const names = (line: LineSpec): string[] => lossCauses(line).map(({ name }) => name)
  expect(names({ ...base, breaks: [] })).not.toContain('breaks')
  expect(names(twoKinds)).toContain('differences between products')
})

test('stops can be taken out together', () => {
  const [group] = lossCauses(base, { stopGroups: [{ name: 'all stops', sources: ['jam'] }] })
  expect(group!.without(base).breakdowns).toEqual([])
})

test('without differences between products every one takes the mean over the mix', () => {
  const products = lossCauses(twoKinds).find(({ kind }) => kind === 'products')!
  const [task] = products.without(twoKinds).stations[1]!.work!
  expect(task!.seconds[0]).toEqual({ kind: 'lognormal', mean: 0.75 * 20 + 0.25 * 60, cv: 0.3 })
  expect(task!.seconds[1]).toEqual(task!.seconds[0])
})

test('waiting for operators, products and receivers is taken out where a line can wait for them', () => {
  const line = {
    ...base,
    operators: [{ name: 'Ann', stations: [0, 1], start: 0 }],
    walks: [{ between: [0, 1] as const, seconds: 4 }],
    supply: { name: 'supply', arrivals: { kind: 'every', seconds: { kind: 'exponential', mean: 60 } }, queueLimit: 3 } as const,
    stations: base.stations.map((station) =>
      station.unload === null ? station : { ...station, receiver: { cycleSeconds: { kind: 'constant', value: 30 } as const, queue: 0 } },
    ),
  }
  const causes = lossCauses(line).filter(({ kind }) => ['operators', 'supply', 'receiver'].includes(kind))
  expect(causes.map(({ name }) => name)).toEqual(['waiting for operators', 'waiting for products', 'waiting for receivers'])
  const free = causes.reduce((now, { without }) => without(now) as typeof now, line)
  expect([free.operators, free.walks, free.supply.arrivals]).toEqual([[], [], { kind: 'always' }])
  expect(free.stations.every(({ receiver }) => receiver === null)).toBe(true)
  for (const { without } of causes) expect(without(without(line))).toEqual(without(line))
})

test('safety stops are a cause where there are any; carriers are too many or too few', () => {
  const reset = { kind: 'exponential', mean: 30 } as const
  const line = {
    ...base,
    stations: base.stations.map((station, index) => ({
      ...station,
      safetyStop: index === 1 ? { probability: 0.3, resetSeconds: reset } : null,
    })),
  }
  const safety = lossCauses(line).find(({ kind }) => kind === 'safety stops')!
  expect(safety.without(line).stations.every(({ safetyStop }) => safetyStop === null)).toBe(true)
  expect(safety.without(safety.without(line))).toEqual(safety.without(line))
  expect(lossCauses(base).some(({ kind }) => kind === 'safety stops')).toBe(false)
  const named = (bestCarriers: number): string => lossCauses(base, { bestCarriers }).at(-1)!.name
  expect([named(base.carriers.count - 1), named(base.carriers.count + 1)]).toEqual(['too many carriers', 'shortage of carriers'])
})
