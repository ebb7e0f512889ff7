import { expect, test } from 'vitest'
import { Outstanding, type Waiting } from './outstanding.ts'

/** Jobs a, b, c …, and what became of them. */
function waitingFor(names: string): { readonly all: Outstanding; readonly became: Record<string, string> } {
  const all = new Outstanding()
  const became: Record<string, string> = {}
  for (const id of names) {
    const waiting: Waiting = {
      id,
      job: { mark: '', key: '', line: '', carriers: 1, seed: '1', from: 0, to: 1, want: 'rows' },
      resolve: (file) => {
        became[id] = `${became[id] ?? ''}answered ${file.length}`
      },
      reject: (error) => {
        became[id] = `${became[id] ?? ''}failed: ${error.message}`
      },
      suspectMs: null,
    }
    all.add(waiting)
  }
  return { all, became }
}

test('an answer counts once', () => {
  const { all, became } = waitingFor('ab')
  all.answer('a', new Uint8Array(3))
  all.answer('a', new Uint8Array(4))
  all.fail('a', new Error('late'))
  all.answer('x', new Uint8Array(1))
  expect(became).toEqual({ a: 'answered 3' })
  expect(all.count).toBe(1)
})

test('what is set aside is told when all others are in, all together', () => {
  const { all, became } = waitingFor('abc')
  all.setAside('a', new Error('first'))
  all.setAside('c', new Error('second'))
  expect(became).toEqual({})
  all.answer('b', new Uint8Array(1))
  expect(became).toEqual({ a: 'failed: first\nsecond', b: 'answered 1', c: 'failed: first\nsecond' })
})

test('a failure of the run itself is told at once', () => {
  const { all, became } = waitingFor('ab')
  all.fail('b', new Error('too many'))
  expect(became).toEqual({ b: 'failed: too many' })
})

test('each has its turn to be looked at, the oldest every time', () => {
  const { all } = waitingFor('abcdefgh')
  const seen = new Set<string>()
  for (let look = 0; look < 4; look += 1) {
    const some = all.some(4).map(({ id }) => id)
    expect(some.slice(0, 2)).toEqual(['a', 'b'])
    for (const id of some) seen.add(id)
  }
  expect([...seen].sort().join('')).toBe('abcdefgh')
})

test('at the end nobody is told anything, and what was waited for is given back', () => {
  const { all, became } = waitingFor('ab')
  expect(all.end().map(({ id }) => id)).toEqual(['a', 'b'])
  all.answer('a', new Uint8Array(1))
  expect([became, all.count]).toEqual([{}, 0])
})
