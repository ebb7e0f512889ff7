import { expect, test } from 'vitest'
import { styledText, type TextStyle, visibleStyled } from './textStyle.ts'

const STYLES: readonly TextStyle[] = ['strong', 'warning', 'bad', 'good']

// ECMA-48 (1991) §8.3.117 SGR: 1 bold, 22 normal intensity, 31 red, 32 green, 35 magenta, 39 default colour
test('weight and colour begin and end on each line', () => {
  expect(styledText('a\n\nb', 'strong', true)).toBe('\u001b[1ma\u001b[22m\n\n\u001b[1mb\u001b[22m')
  expect(styledText('a', 'warning', true)).toBe('\u001b[1;35ma\u001b[22;39m')
  expect(styledText('a', 'bad', true)).toBe('\u001b[1;31ma\u001b[22;39m')
  expect(styledText('a', 'good', true)).toBe('\u001b[1;32ma\u001b[22;39m')
})

test('without colour the text is as it was', () => {
  for (const style of STYLES) expect(styledText('a\nb', style, false)).toBe('a\nb')
})

test('our own sequences go through, others are shown', () => {
  for (const style of STYLES) expect(visibleStyled(styledText('a', style, true))).toBe(styledText('a', style, true))
  expect(visibleStyled('\r\u001b[2Ka')).toBe('\r\u001b[2Ka')
  for (const other of ['\u001b[2J', '\u001b[5m', '\u001b]0;x\u0007', '\u001b[2K', '\u001b[1', '\u009b1m', '\ra'])
    expect(visibleStyled(other)).not.toMatch(/\p{Cc}/u)
})
