import { stream } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { streamOf } from './streamOf.ts'

test('a name with a stroke in it is one name', () =>
  expect(streamOf('1', 2, 'input', 'wire/seal')()).toBe(stream('1', 2, 'input/wire seal')()))
