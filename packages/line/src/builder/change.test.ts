import { expect, test } from 'vitest'
import { withChange } from './change.ts'

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
