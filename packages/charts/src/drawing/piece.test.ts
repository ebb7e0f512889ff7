import { expect, test } from 'vitest'
import { areaPiece, dotPiece, pathPiece, rulePiece, wordsPiece } from './piece.ts'

test('pieces are elements without paint', () => {
  expect(rulePiece([0, 1], [2, 3.04], 'line', { dash: [2, 2] }).svg).toBe('<path d="M0 1L2 3" stroke-dasharray="2 2"/>')
  expect(areaPiece(1, 2, 3, 4, 'bar', { tip: 'a & b', pick: '7' }).svg).toBe(
    '<rect x="1" y="2" width="3" height="4" data-tip="a &amp; b" data-pick="7"/>',
  )
  expect(
    pathPiece(
      [
        [
          [0, 0],
          [1, 1],
        ],
        [
          [2, 2],
          [3, 3],
        ],
      ],
      'line',
    ).svg,
  ).toBe('<path d="M0 0L1 1M2 2L3 3"/>')
})

test('a shape is a circle or has corners around its middle', () => {
  expect(dotPiece(5, 5, 2, 'circle', 'dot').svg).toBe('<circle cx="5" cy="5" r="2"/>')
  expect(dotPiece(5, 5, 2, 'diamond', 'dot').svg).toBe('<path d="M5 2.5L7.5 5L5 7.5L2.5 5Z"/>')
})

test('a text stands with its middle at the height it is given', () => {
  expect(wordsPiece('<S1>', 10, 20, { ink: 'words', align: 'end' }).svg).toBe('<text x="10" y="24.7" text-anchor="end">&lt;S1&gt;</text>')
  expect(wordsPiece('S1', 10, 20, { ink: 'words', rim: 'paper' }).rim).toBe('paper')
})
