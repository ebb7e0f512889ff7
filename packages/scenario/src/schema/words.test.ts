import { expect, test } from 'vitest'
import { count, duration, either, keys, named } from './words.ts'

const messages = (result: { error?: { issues: readonly { message: string }[] } | undefined }) =>
  result.error?.issues.map((issue) => issue.message) ?? []

test('an error carries what was expected, as a tag', () => {
  expect(messages(duration().safeParse(5))).toEqual(['@duration'])
  expect(messages(count('how many').safeParse('x'))).toEqual(['@count'])
  expect(messages(either('start', [duration(), count('n')]).safeParse([]))).toEqual(['@start'])
  expect(messages(keys({ a: duration() }, 'x').safeParse(1))).toEqual(['@map'])
})

test('an unknown key carries the known ones', () => {
  expect(messages(keys({ a: duration(), b: duration().optional() }, 'x').safeParse({ a: '1 s', c: 1 }))).toEqual(['@keys:a,b'])
})

test('names are free', () => {
  expect(named(duration(), 'x').safeParse({ 'any thing': '1 s', __proto: '2 s' }).success).toBe(true)
})
