import { expect, test } from 'vitest'
import { createReport } from '../../problems/report.ts'
import { readSource } from '../../text/source.ts'
import type { Context } from '../context.ts'
import { ONE, readShares, sequence, variantShares, weights } from './shares.ts'

function setUp(text: string) {
  const report = createReport(text)
  const context: Context = { report, files: null, origins: new Map(), zoneIndex: new Map(), tables: [], takenOut: new Set() }
  return { context, root: readSource(text, report)!, codes: () => report.problems().map((problem) => problem.code) }
}

test('shares are read exactly', () => {
  const { context, root } = setUp('a: 12.5 %\nb: 87.5 %\n')
  expect(readShares(context, root)).toEqual([
    { digits: 125n, scale: 3 },
    { digits: 875n, scale: 3 },
  ])
})

test('shares of variants are the product over their options and those they do not have', () => {
  const { context, root } = setUp('share: { a: 25 %, b: 100 % }\n')
  const option = { name: 'p', at: root, adds: new Map() }
  const variants = ['a', 'a + p', 'b', 'b + p'].map((name, i) => ({ name, base: i >> 1, options: i % 2 === 0 ? [] : [0] }))
  const shares = variantShares(context, [ONE, ONE], ['a', 'b'], [option], variants)
  expect(shares?.map(({ digits, scale }) => Number(digits) / 10 ** scale)).toEqual([0.75, 0.25, 0, 1])
})

test('weights and sequences go by the names of the variants', () => {
  const { context, root, codes } = setUp('weights: { b: 1, a: 2 }\nsequence: [b, b, a]\n')
  expect(weights(context, root, 'random', ['a', 'b'])).toEqual({ kind: 'random', shares: [2, 1] })
  expect(sequence(context, root, 'list', ['a', 'b'])).toEqual({ kind: 'list', sequence: [1, 1, 0] })
  expect(sequence(context, root, 'list', ['a'])).toBeNull()
  expect(codes()).toEqual(['E_UNKNOWN_VARIANT', 'E_UNKNOWN_VARIANT'])
})
