import { parseDocument, Scalar, type Node } from 'yaml'
import { expect, test } from 'vitest'
import { keyText, putNode } from './putNode.ts'

function put(text: string, ...steps: (string | number)[]) {
  const document = parseDocument(text)
  const way: unknown[] = []
  const nowhere = putNode(document.contents as Node, steps, new Scalar(7), (part) => way.push(part))
  return { text: document.toString(), nowhere, way: way.length }
}

test('a value takes the place of another; what is missing on the way is made', () => {
  expect(put('a: { b: 1 }\n', 'a', 'b')).toEqual({ text: 'a: { b: 7 }\n', nowhere: null, way: 2 })
  expect(put('a: 1\n', 'c', 'd').text).toBe('a: 1\nc:\n  d: 7\n')
  expect(put('a: [1, { b: 2 }]\n', 'a', 1, 'b')).toEqual({ text: 'a: [ 1, { b: 7 } ]\n', nowhere: null, way: 3 })
  expect(put('a: [1, 2]\n', 'a', 0).text).toBe('a: [ 7, 2 ]\n')
})

test('the step that leads nowhere is told', () => {
  expect(put('a: 1\n', 'a', 'b').nowhere).toBe('b')
  // a key with nothing behind it is a value
  expect(put('a:\n', 'a', 'b').nowhere).toBe('b')
  expect(put('a: [1]\n', 'a', 1).nowhere).toBe(1)
  expect(put('a: { b: 1 }\n', 'a', 0).nowhere).toBe(0)
})

test('keys are told as they are written', () => {
  const [pair] = (parseDocument('1.0: x').contents as unknown as { items: { key: unknown }[] }).items
  expect(keyText(pair!.key)).toBe('1.0')
  expect(keyText(null)).toBeNull()
})
