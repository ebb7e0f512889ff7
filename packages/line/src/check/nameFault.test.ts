import { expect, test } from 'vitest'
import { nameFault, titleFault } from './nameFault.ts'

test.each([
  ['Z01', null],
  ['fit lid', null],
  ['', 'it is empty'],
  [' a', 'it begins or ends with a blank'],
  ['a/b', 'it has a "/", which separates the names of random streams'],
  ['a\nb', 'it has a line break or a control character'],
  ['x'.repeat(201), 'it has 201 characters'],
  ['__proto__', 'programs keep this word for themselves'],
])('%j', (name, fault) => expect(nameFault(name)).toBe(fault))

test('a title may have a stroke', () => expect(titleFault('left/right')).toBeNull())
