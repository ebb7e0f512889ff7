import { readScenario } from '@loopwright/scenario'
import { distributionMean } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { timeStudy } from '../times/timeStudy.ts'
import { assemble } from './assemble.ts'
import { timePlaceOf, timePlaces } from './besideTasks.ts'

const skeleton = `format: 1
question: What does it make?
name: One operator
warmup: 1 h
length: 8 h
drive: { speed: 15 m/min }
carriers: { count: 3, length: 0.75 m }
loop: 8 zones of 1 m
supply: { every: exponential 60 s, queue: 3 }
stations:
  Load: { zone: Z01, unload: {}, load: { place: 10 s }, receiver: { cycle: 20 s } }
  Fit: { zone: Z04, name: Fit pipes, work: { fit: 30 s } }
  Wire: { zone: Z06, work: { wire: 30 s }, supply: { every: 30 s } }
operators: { anna: { stations: [Fit, Wire] } }
walks: [{ between: [Fit, Wire], lasts: 6 s }] # as paced
`
const of = (text: string) => readScenario(text).scenario!
const observed = (task: string, variant: string | null, seconds: number) =>
  Array.from({ length: 6 }, (_, index) => ({
    task,
    variant,
    operator: null,
    observedSeconds: seconds + index,
    rating: null,
    when: null,
    line: index + 2,
    place: '',
  }))
const put = (...tasks: readonly (readonly [task: string, variant: string | null, seconds: number])[]) =>
  assemble(skeleton, {
    times: { studies: timeStudy(tasks.flatMap((one) => observed(...one))), source: { file: 'times.csv' } },
    stops: null,
    mix: null,
  })

test('a supply, a receiver, releases and walks, by what people call them', () => {
  const scenario = of(skeleton)
  expect(timePlaces(scenario, skeleton).map(({ name, path, constant }) => `${name}: ${path}${constant ? ', one time' : ''}`)).toEqual([
    'supply: supply.every',
    'receiver Load: stations.Load.receiver.cycle',
    'release Load: stations.Load.release',
    'release Fit: stations.Fit.release',
    'supply Wire: stations.Wire.supply.every',
    'release Wire: stations.Wire.release',
    'walk Fit Wire: walks[0].lasts, one time',
  ])
  const found = ['Arrivals', 'Walk from Wire to Fit pipes', 'receiver LOAD', 'walk Load Wire'].map(
    (name) => timePlaceOf(scenario, skeleton, name)?.name,
  )
  expect(found).toEqual(['supply', 'walk Fit Wire', 'receiver Load', undefined])
})

test('their times go there, each with where it comes from; a walk takes the mean', () => {
  const { text, faults } = put(['supply', null, 50], ['walk Fit - Wire', null, 4], ['release fit', null, 1], ['wire', null, 40])
  expect(faults).toEqual([])
  const { line } = of(text!)
  expect(line.supply.arrivals).toMatchObject({ kind: 'every', seconds: { kind: 'lognormal', mean: 52.5 } })
  expect(line.supply.queueLimit).toBe(3)
  expect(line.walks).toEqual([{ between: [1, 2], seconds: 6.5 }])
  expect(distributionMean(line.stations[1]!.releaseSeconds)).toBeCloseTo(3.5, 6)
  expect(text).toContain(
    'lasts: 6.5 s # measured, times.csv: 6 times, too few for a shape: lognormal by their mean and spread, by their mean',
  )
})

test('what does not fit is told', () => {
  expect(put(['supply', 'small', 50]).faults).toEqual([
    'times of "supply": supply has one time for all variants; put its times into a table of their own, without variants',
  ])
  expect(put(['lunch', null, 50]).faults[0]).toContain(
    'no station of the skeleton has such a task; there are place, fit, wire, and beside tasks supply, receiver Load,',
  )
  expect(put(['suply', null, 50]).faults[0]).toContain('did you mean "supply"?')
})

test('ways by hand go to their moves, the transfer of all corners to its lift and lowering', () => {
  const byHand = skeleton.replace('length: 0.75 m }', 'length: 0.75 m, width: 0.75 m }').replace(
    'supply: {',
    `corners: { zones: [Z02, Z07], turn: right, lift: 2 s, lower: 1 s, enterOnlyIfExitClear: true }
paths:
  - { from: Z03, push: Load, move: 5 s }
  - { from: Z04, push: Fit, move: 6 s }
  - { from: Z05, push: Fit, move: 6 s }
supply: {`,
  )
  const made = assemble(byHand, {
    times: {
      studies: timeStudy([observed('push Load', null, 8), observed('Push Z05', null, 11), observed('lift', null, 2)].flat()),
      source: { file: 'times.csv' },
    },
    stops: null,
    mix: null,
  })
  expect(made.faults).toEqual([])
  const { line } = of(made.text!)
  const manual = line.paths.filter(({ manual }) => manual !== null).map(({ moveSeconds }) => distributionMean(moveSeconds!))
  expect(manual).toEqual([expect.closeTo(10.5, 6), expect.closeTo(6, 6), expect.closeTo(13.5, 6)])
  expect(line.zones[1]!.transfer).toMatchObject({ liftSeconds: expect.closeTo(4.5, 5), lowerSeconds: expect.closeTo(1, 5) })
  const twice = assemble(byHand, {
    times: { studies: timeStudy(observed('push Fit', null, 8)), source: { file: 'times.csv' } },
    stops: null,
    mix: null,
  })
  expect(twice.faults[0]).toContain('no station of the skeleton has such a task')
})
