import { expect, test } from 'vitest'

test('functions of a file that is imported are not named again', async () => {
  const { defineProperty } = Object
  let named = 0
  Object.defineProperty = (of, key, how) => {
    if (key === 'name') named += 1
    return defineProperty(of, key, how)
  }
  try {
    const path = './spent.ts?named'
    expect(await import(path)).toHaveProperty('total')
  } finally {
    Object.defineProperty = defineProperty
  }
  expect(named).toBe(0)
})
