import { readFileSync } from 'node:fs'
import { distributionMean } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { readScenario } from '../read.ts'
import { readScenarioWith } from './changes.ts'
import { fileValues, timesScaled } from './values.ts'

const demo = readFileSync(new URL('../../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')

describe('a value of a file', () => {
  test.each([
    ['plan', '320 per shift'],
    ['carriers.count', 12],
    ['stations.S5.zone', 'Z15'],
    ['corners.zones[1]', 'Z11'],
    ['stops.transferFault.after', 'exponential 4628.6 s'],
    ['products.variants', { small: '40 %', medium: '30 %', large: '20 %', coastal: '10 %' }],
    ['drive.stagger', null],
    ['stations.S5.nothing.there', null],
    ['corners.zones[9]', null],
    ['a..b', null],
  ])('%s', (path, value) => {
    expect(fileValues(demo)(path)).toEqual(value)
  })
  test('of a file that cannot be read there is none', () => expect(fileValues('a: [')('a')).toBeNull())
})

test.each([
  ['45 s', '90 s'],
  ['exponential 240 min', 'exponential 480 min'],
  ['lognormal 4 min ± 65.83 %', 'lognormal 8 min ± 65.83 %'],
  ['30..60 s', '60..120 s'],
  ['pert 25 .. 40..80.5 s', 'pert 50 .. 80..161 s'],
  ['30 s..1 min', '60 s..2 min'],
  ['none', null],
  ['15 m/s', null],
  [12, null],
])('%s twice as long', (value, scaled) => {
  expect(timesScaled(value, 2)).toEqual(scaled)
})

test('titles, kinds and columns stay as they are', () => {
  expect(timesScaled({ kind: 'gamma', mean: '10 s', shape: 2 }, 3)).toEqual({ kind: 'gamma', mean: '30 s', shape: 2 })
  expect(timesScaled({ title: 'after 5 s', time: '10 s' }, 3)).toEqual({ title: 'after 5 s', time: '30 s' })
  expect(timesScaled({ file: '5 s.csv', column: '3 s' }, 3)).toBeNull()
})

test('every task of the demo, scaled in its own form, has a mean that is as much longer', () => {
  const base = readScenario(demo).scenario!.line
  const values = fileValues(demo)
  for (const [index, { name, work, load }] of base.stations.entries()) {
    const duty = work !== null ? 'work' : load !== null ? 'load' : 'unload'
    const path = `stations.${name}.${duty}`
    // options add their own time to a task: their variants stay out
    const plain = base.variants.map((variant, at) => [variant, at] as const).filter(([variant]) => !/Kit/.test(variant))
    expect(plain).toHaveLength(4)
    const changed = readScenarioWith(demo, { [path]: timesScaled(values(path)!, 1.25)! }).scenario!.line
    const mean = (line: typeof base, variant: number): number =>
      line.stations[index]![duty]!.reduce((sum, task) => sum + distributionMean(task.seconds[variant]!), 0)
    for (const [, at] of plain) expect(mean(changed, at)).toBeCloseTo(1.25 * mean(base, at), 9)
  }
})
