import { expect, test } from 'vitest'
import { keyPieces } from './key.ts'

const entry = (text: string) => ({ text, sample: 'area', ink: 'band' }) as const

test('entries stand side by side, and begin a new line where one no longer fits', () => {
  const three = [entry('worked on'), entry('waiting'), entry('coming in, or stopped')]
  expect([600, 200, 100].map((width) => keyPieces(three, width).heightPixels)).toEqual([22, 40, 58])
  expect(keyPieces([], 100)).toEqual({ pieces: [], heightPixels: 0 })
})

test('an entry longer than the picture is shortened', () => {
  expect(keyPieces([entry('a cause with a long name that goes on')], 100).pieces.at(-1)!.svg).toContain('…')
})
