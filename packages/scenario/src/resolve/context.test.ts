import { expect, test } from 'vitest'
import { createReport } from '../problems/report.ts'
import { readSource } from '../text/source.ts'
import { type Context, checkName, childNamed, fraction, near, quantity, quantityOrNone } from './context.ts'

function contextOf(text: string) {
  const report = createReport(text)
  const context: Context = { report, files: null, origins: new Map(), zoneIndex: new Map(), tables: [], takenOut: new Set() }
  return { context, root: readSource(text, report)!, codes: () => report.problems().map((problem) => problem.code) }
}

test('a quantity that is missing is no finding, one that is wrong is', () => {
  const { context, root, codes } = contextOf('a: 5 s\nb: 5 kg\nc: 0 s\nd: none\ne: [1]\n')
  const read = (key: string) => quantity(context, childNamed(root, key), 'duration', 'above zero')
  expect([read('a'), read('missing'), read('e')]).toEqual([5, undefined, undefined])
  expect(codes()).toEqual([])
  expect([read('b'), read('c')]).toEqual([undefined, undefined])
  expect(codes()).toEqual(['E_UNIT_UNKNOWN', 'E_ZERO'])
  expect(quantityOrNone(context, childNamed(root, 'd'), 'duration', 'zero')).toBeNull()
})

test('a share is written with a percent sign or as a small bare number', () => {
  const { context, root, codes } = contextOf('a: 15 %\nb: 0.15\nc: 15\nd: -0.1\ne: 150 %\n')
  const read = (key: string, most: 'one' | 'any') => fraction(context, childNamed(root, key), most)
  expect([read('a', 'any'), read('b', 'any'), read('e', 'any'), read('missing', 'any')]).toEqual([0.15, 0.15, 1.5, undefined])
  expect([read('c', 'any'), read('d', 'any'), read('e', 'one')]).toEqual([undefined, undefined, undefined])
  expect(codes()).toEqual(['E_CV_BARE', 'E_NEGATIVE', 'E_SHARE_BEYOND'])
})

test('names may hold anything but slashes, line breaks, control characters and blanks at the ends', () => {
  const { context } = contextOf('a: 1')
  const ok = (name: string) => checkName(context, name, () => undefined)
  expect(['S1', 'Fan deck and casing', 'Gerät ①', 'a.b', '#', '"', '<<', 'constructor', 'x'.repeat(200)].map(ok)).not.toContain(false)
  expect(['', ' ', 'a/b', 'a ', ' a', 'a\nb', 'a\u0007b', 'a\u2028b', '__proto__', 'x'.repeat(201)].map(ok)).not.toContain(true)
})

test('after a hundred findings nobody is told the nearest word', () => {
  const { context } = contextOf('x'.repeat(300))
  expect(near(context, 'Z-O7', ['Z-07'])).toBe('Z-07')
  for (let i = 0; i < 101; i++) context.report.addAt(i, 1, '', { code: 'E_X', severity: 'error', message: String(i), fix: '' })
  expect(near(context, 'Z-O7', ['Z-07'])).toBeNull()
})
