import { expect, test } from 'vitest'
import { keyedTitle } from './planZone.ts'

test('a key stands before the title, once', () => {
  expect(keyedTitle({ key: 'S5', title: 'Fan deck', duties: [] })).toBe('S5 Fan deck')
  expect(keyedTitle({ key: 'mend', title: 'mend', duties: [] })).toBe('mend')
  expect(keyedTitle({ title: 'Fan deck', duties: [] })).toBe('Fan deck')
})
