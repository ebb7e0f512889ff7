import { expect, test } from 'vitest'
import { meanOf } from './mean.ts'

test('the sum by the count', () => expect(meanOf([40, 41, 45])).toBe(42))
