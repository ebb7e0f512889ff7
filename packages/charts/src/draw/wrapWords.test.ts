import { expect, test } from 'vitest'
import { textPixels, wrapWords } from './wrapWords.ts'

test('no line is longer than its room, and nothing is lost while there is room', () => {
  const title = 'Fit compressor and base pan, left side'
  for (const pixels of [40, 70, 110, 200, 500]) {
    for (const line of wrapWords(title, pixels, 13, 3))
      expect(textPixels(line, 13)).toBeLessThanOrEqual(Math.max(pixels, textPixels('ab', 13)))
  }
  expect(wrapWords(title, 150, 13, 4).join(' ')).toBe(title)
})

test('what does not fit is cut, and says so', () => {
  expect(wrapWords('one two three four', 60, 13, 2)).toEqual(['one', 'two t…'])
  expect(wrapWords('Untrennbarkeit', 60, 13, 2)).toEqual(['Untre…'])
})

test('spaces do not count', () => expect(wrapWords('  a   b ', 100, 13, 2)).toEqual(['a b']))
