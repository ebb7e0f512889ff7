import { expect, test } from 'vitest'
import { whyMore } from './lossSigns.ts'

test('each kind of cause has its own reason', () => {
  const kinds = ['stop', 'breaks', 'operators', 'supply', 'receiver', 'exchange', 'spread of times', 'products', 'carriers'] as const
  expect(kinds.map((kind) => whyMore({ kind })).every((why) => why.length > 20)).toBe(true)
  expect(whyMore({ kind: 'breaks' })).toContain('the conveyor goes on')
})
