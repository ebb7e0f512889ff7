import { expect, test } from 'vitest'
import { corners, handWays } from './handWays.ts'

test('only ways with somebody at them, by their place in the list', () => {
  const text = 'paths:\n  - Z01 > Z02\n  - { from: Z02, to: Z03 }\n  - { from: Z03, to: Z04, pull: S2, move: 6 s }\n'
  expect(handWays(text)).toEqual([{ kind: 'pull', station: 'S2', from: 'Z03', to: 'Z04', path: 'paths[2].move' }])
  expect(handWays('name: none')).toEqual([])
})

test('corners of several kinds share no time', () => {
  expect(corners('corners: [{ zones: [Z01], lift: 2 s, lower: 1 s }]')).toEqual([])
  expect(corners('corners: { zones: [Z01], lift: 2 s }')).toEqual(['lift'])
})
