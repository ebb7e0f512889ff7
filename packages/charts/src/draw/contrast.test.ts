import { expect, test } from 'vitest'
import { contrast, luminance, readableOn } from './contrast.ts'

test('luminance of the primaries is their weight', () => {
  // W3C, Web Content Accessibility Guidelines 2.2, definition of relative luminance
  expect(luminance('#ff0000')).toBeCloseTo(0.2126, 10)
  expect(luminance('#00ff00')).toBeCloseTo(0.7152, 10)
  expect(luminance('#0000ff')).toBeCloseTo(0.0722, 10)
})

test('the grey that just fails 4.5 : 1 on white, and the one that just passes', () => {
  // common knowledge among web authors, from memory: #777777 has 4.48 : 1, #767676 has 4.54 : 1
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2)
  expect(contrast('#ffffff', '#767676')).toBeCloseTo(4.54, 2)
})

test('the first readable text is taken, else the most readable', () => {
  expect(readableOn('#ffffff', ['#eeeeee', '#444444', '#000000'])).toBe('#444444')
  expect(readableOn('#808080', ['#999999', '#cccccc'])).toBe('#cccccc')
})
