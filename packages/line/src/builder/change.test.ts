import { expect, test } from 'vitest'
import { type LineChange, type StationChange, withChange } from './change.ts'
import { specOf } from './lineSpec.ts'
import type { Duty } from './sketch.ts'

const sketch = {
  zones: 4,
  carriers: 2,
  stations: { S1: { zone: 'Z01', work: { fit: 3, glue: 4 } }, S2: { zone: 'Z02', load: 1 } },
  takeOut: ['Z04'],
  end: 60,
}

test('records key by key, down to a task; a distribution as a whole', () => {
  const fit = { kind: 'uniform', min: 1, max: 2 } as const
  const { stations } = withChange(sketch, { stations: { S1: { work: { fit } } } })
  expect(stations).toEqual({ S1: { zone: 'Z01', work: { fit, glue: 4 } }, S2: { zone: 'Z02', load: 1 } })
})

test('times by product are one value, null among them; a task may be called kind', () => {
  const fit = { A: 3, B: null }
  expect(withChange(sketch, { stations: { S1: { work: { fit } } } }).stations!.S1!.work).toEqual({ fit, glue: 4 })
  const named = { ...sketch, stations: { S1: { zone: 0, work: { kind: 3, glue: 4 } } } }
  expect(withChange(named, { stations: { S1: { work: { glue: 5 } } } }).stations!.S1!.work).toEqual({ kind: 3, glue: 5 })
})

test('null where there is nothing leaves nothing', () => {
  const bare = { zones: 4, carriers: 2, end: 60 }
  expect(withChange(bare, { stations: { S2: null }, operators: { Ann: null } })).toEqual({ ...bare, stations: {}, operators: {} })
})

test('null takes a part out; what is not named stays', () => {
  expect(withChange(sketch, { stations: { S2: null } }).stations).toEqual({ S1: sketch.stations.S1 })
  expect(withChange(sketch, {})).toEqual(sketch)
})

test('carriers by number or by what is different; zones taken out come to those that are', () => {
  expect(withChange(sketch, { carriers: { length: 1 } }).carriers).toEqual({ count: 2, length: 1 })
  expect(withChange(sketch, { takeOut: ['Z03'], putIn: { after: 'Z01' } })).toMatchObject({
    takeOut: ['Z04', 'Z03'],
    putIn: [{ after: 'Z01' }],
  })
})

test('null takes out a duty, a task and what is said of the whole', () => {
  expect(withChange(sketch, { stations: { S1: { work: { glue: null } } } }).stations!.S1!.work).toEqual({ fit: 3 })
  expect(withChange(sketch, { stations: { S1: { work: null, load: 2 } } }).stations!.S1).toEqual({ zone: 'Z01', load: 2 })
  expect(withChange({ ...sketch, warmup: 9 }, { warmup: null, takeOut: null })).toEqual({ ...sketch, takeOut: [] })
  expect(withChange({ ...sketch, carriers: { count: 2, start: 'packed' } }, { carriers: { start: null } }).carriers).toEqual({ count: 2 })
})

test('products come in the new way alone', () => {
  const bare = { zones: 4, carriers: 2, end: 60 }
  const timed = withChange({ ...bare, supply: { every: 30, queue: 4 } }, { supply: { times: [1, 2] } })
  expect(timed.supply).toEqual({ times: [1, 2], queue: 4 })
  expect(withChange(timed, { supply: { every: 20 } }).supply).toEqual({ every: 20, queue: 4 })
  expect(withChange(timed, { supply: 'always' }).supply).toBe('always')
})

test('what is no change, and what is no number of carriers, is told of', () => {
  const told = (change: unknown): string => {
    try {
      specOf('loop', withChange(sketch, change as LineChange))
    } catch (error) {
      return (error as Error).message
    }
    return ''
  }
  expect(told(undefined)).toBe('change: found nothing; write a set of keys')
  expect(told([])).toBe('change: found a list; write a set of keys')
  expect(
    specOf('loop', withChange(sketch, { carriers: '8' } as object)).problems.map(({ path, message }) => `${path}: ${message}`),
  ).toContain('carriers: found the text "8"')
})

test('of a distribution parameters alone can change; with a kind it is another one', () => {
  const times = (work: Duty) =>
    withChange({ ...sketch, stations: { S1: { zone: 'Z01', work } } }, { stations: { S1: { work: change } } }).stations!.S1!.work
  const fit = { kind: 'lognormal', mean: 30, cv: 0.2 } as const
  let change: NonNullable<StationChange['work']> = { cv: 0.4 }
  expect(times(fit)).toEqual({ ...fit, cv: 0.4 })
  change = { fit: { mean: 20 } }
  expect(times({ fit, glue: 4 })).toEqual({ fit: { ...fit, mean: 20 }, glue: 4 })
  change = { kind: 'exponential', mean: 20 }
  expect(times(fit)).toEqual(change)
  change = { look: 5 }
  expect(times(fit)).toEqual({ look: 5 })
})
