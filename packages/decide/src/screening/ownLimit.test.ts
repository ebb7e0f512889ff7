import { expect, test } from 'vitest'
import { ownLimit } from './ownLimit.ts'

test('without an own copy the limit is asked for, with the key to write', () => {
  const { guidance, why } = ownLimit({ ownCopy: [] }, 'startForce', 'ISO 11228-2', 'at most')
  expect(guidance).toBeNull()
  expect(why).toBe('the limit is not printed here: read it in your own copy of ISO 11228-2, and write it under "ownCopy: startForce:"')
})

test('with one it is compared, and its source is the user’s', () => {
  const own = { limit: 'startForce', value: 130, source: 'ISO 11228-2, table of the user' } as const
  expect(ownLimit({ ownCopy: [own] }, 'startForce', 'ISO 11228-2', 'at most')).toEqual({
    guidance: { value: 130, upTo: null, side: 'at most', source: own.source, edition: 'as you read it', evidence: 'your own copy' },
    why: null,
  })
})
