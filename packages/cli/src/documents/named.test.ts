import { expect, test } from 'vitest'
import { named } from './named.ts'

test('values by name', () => expect(named(['a', 'b'], [1, 2])).toEqual({ a: 1, b: 2 }))
test('one short', () => expect(() => named(['a', 'b'], [1])).toThrow('1 values for 2 names'))
