import { expect, test } from 'vitest'
import { count, duration, either, keys, knownBeside, named } from './words.ts'

const messages = (result: { error?: { issues: readonly { message: string }[] } | undefined }) =>
  result.error?.issues.map((issue) => issue.message) ?? []

test('an error carries what was expected, as a tag', () => {
  expect(messages(duration().safeParse(5))).toEqual(['@duration'])
  expect(messages(count('how many').safeParse('x'))).toEqual(['@count'])
  expect(messages(either('start', [duration(), count('n')]).safeParse([]))).toEqual(['@start'])
  expect(messages(keys({ a: duration() }, 'x').safeParse(1))).toEqual(['@map'])
})

test('of an unknown key the known ones are told, also within a union', () => {
  const schema = keys({ a: duration(), b: duration().optional() }, 'x')
  const [issue] = schema.safeParse({ a: '1 s', c: 1, d: 2 }).error!.issues
  expect(issue).toMatchObject({ code: 'unrecognized_keys', keys: ['c', 'd'] })
  expect(knownBeside((issue as { keys: string[] }).keys)).toEqual(['a', 'b'])
  const union = either('start', [count('n'), keys({ e: schema }, 'y')]).safeParse({ e: { c: 1 } }).error!.issues[0]!
  const inner = (union as unknown as { errors: { code: string; keys: string[] }[][] }).errors
    .flat()
    .find(({ code }) => code === 'unrecognized_keys')
  expect(knownBeside(inner!.keys)).toEqual(['a', 'b'])
  expect(knownBeside([])).toEqual([])
})

test('names are free', () => {
  expect(named(duration(), 'x').safeParse({ 'any thing': '1 s', __proto: '2 s' }).success).toBe(true)
})
