import { expect, test } from 'vitest'
import { addressValues } from './addressValues.ts'

test('values by their keys, the last of the same key, percent signs read', () => {
  expect(addressValues('#if.carriers=9&if.carriers=12&if.S6.time=61.8+s&view=1', 'if.')).toEqual({ carriers: '12', 'S6.time': '61.8 s' })
  expect(addressValues('#if.%3Ddrive.speed=9%20m/min', 'if.')).toEqual({ '=drive.speed': '9 m/min' })
})

test('what is no address of ours says nothing and changes nothing', () => {
  for (const hash of ['', '#', '#a-heading', '#if', '#%', '#&&==']) expect(addressValues(hash, 'if.')).toEqual({})
  const odd = addressValues('#if.__proto__=x&if.constructor=y', 'if.')
  expect(Object.getPrototypeOf(odd)).toBe(Object.prototype)
  expect(Object.keys(odd)).toEqual(['__proto__', 'constructor'])
})
