import { expect, test } from 'vitest'
import { rowAxis, rowWords } from './rows.ts'

test('rows go down; without any there is room for one', () => {
  expect([rowAxis(4), rowAxis(0)].map(({ from, to }) => [from, to])).toEqual([
    [4, 0],
    [1, 0],
  ])
})

test('the name makes room for the number', () => {
  expect(rowWords(2, 'tester', '12 min')).toMatchObject([
    { x: 'from', text: 'tester', beside: '12 min', ink: 'words' },
    { x: 'to', text: '12 min', align: 'end' },
  ])
  expect(rowWords(2, 'tester', '12 min', true)[0]!.ink).toBe('strong')
})
