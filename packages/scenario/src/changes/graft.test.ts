import { expect, test } from 'vitest'
import { createReport } from '../problems/report.ts'
import { plain } from '../text/located.ts'
import { readSource, readValue } from '../text/source.ts'
import { graft, moved, stepInto } from './graft.ts'

const TEXT = 'drive: { speed: 12 m/min }\ncorners: [{ lift: 1 s }, { lift: 2 s }]\nempty:\n'
const root = readSource(TEXT, createReport(TEXT))!
const value = { ...readValue('[1, { a: 2 }]', 0, 'elsewhere', createReport(''))!, keyStart: 0, keyEnd: 1 }
const put = (...steps: readonly (string | number)[]) => {
  const tree = graft(root, steps, value)
  return tree === null ? null : (JSON.parse(JSON.stringify(plain(tree))) as unknown)
}

test('a value in place of another, at an index, or where nothing was', () => {
  const rest = { drive: { speed: '12 m/min' }, corners: [{ lift: '1 s' }, { lift: '2 s' }], empty: null }
  expect(put('drive', 'speed')).toEqual({ ...rest, drive: { speed: [1, { a: 2 }] } })
  expect(put('corners', 1)).toEqual({ ...rest, corners: [{ lift: '1 s' }, [1, { a: 2 }]] })
  expect(put('empty', 'x')).toEqual({ ...rest, empty: { x: [1, { a: 2 }] } })
  expect(put('new', 'x', 'y')).toEqual({ ...rest, new: { x: { y: [1, { a: 2 }] } } })
  expect(put('drive', 0)).toBeNull()
  expect(put('corners', 2)).toBeNull()
  expect(put('drive', 'speed', 'x')).toBeNull()
})

test('one step down, by key or by index', () => {
  expect(stepInto(stepInto(stepInto(root, 'corners'), 1), 'lift')?.source).toBe('2 s')
  expect([stepInto(root, 'none'), stepInto(root, 0), stepInto(undefined, 'drive')]).toEqual([undefined, undefined, undefined])
})

test('a value moved to another path is told there, with all that is in it', () => {
  const there = moved(value, 'here')
  expect([there.path, there.items[1]!.path, there.items[1]!.entries.get('a')!.value.path]).toEqual(['here', 'here[1]', 'here[1].a'])
})
