import { expect, test } from 'vitest'
import { Mistake } from './fault.ts'
import { thrownFault } from './thrownFault.ts'

const LINES = ['', 'await sweep({', '  replication: 20,', '})']
const places = {
  of: () => ({ file: 'a.ts', line: 2, column: 7, source: LINES[1]! }),
  line: (_: string, line: number) => LINES[line - 1] ?? '',
}

test('at the place from which it was thrown', () =>
  expect(thrownFault(new Error('no'), { line: 1, column: 1 }, { file: 'a.ts', places })).toMatchObject({
    line: 2,
    column: 7,
    message: 'no',
    fix: '',
  }))

test('at the word that is meant', () =>
  expect(thrownFault(new Mistake('no', 'yes', 'replication'), { line: 1, column: 1 }, { file: 'a.ts', places })).toMatchObject({
    line: 3,
    column: 3,
    length: 11,
    fix: 'yes',
  }))

test('at the step where nothing is known of places; anything may be thrown', () => {
  expect(thrownFault('a text', { line: 4, column: 2 }, { file: 'a.ts', places: undefined })).toMatchObject({
    line: 4,
    column: 2,
    message: 'a text',
  })
  expect(thrownFault(new Mistake('no', 'yes', 'nowhere'), { line: 1, column: 1 }, { file: 'a.ts', places })).toMatchObject({
    line: 2,
    column: 7,
  })
})
