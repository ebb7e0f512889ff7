import { describe, expect, test } from 'vitest'
import { numberStyle, readNumber } from './numberStyle.ts'

test.each([
  [['12,5', '13'], ';', 'comma'],
  [['12.5', '1.250'], ',', 'point'],
  [['12.5', '13,5'], ';', 'mixed'],
  [['1,234'], ';', 'unsure'],
  [['45.123', '44.980'], ',', 'point'],
  [['45.123', '44.980'], ';', 'unsure'],
  [['12', '13'], ',', 'point'],
  [['1.234,5'], ';', 'comma'],
  [['0,456'], ',', 'comma'],
])('%j between %j: %s', (texts, separator, style) => expect(numberStyle(texts, separator)).toBe(style))

describe('numbers', () => {
  test.each([
    ['45', 'unsure', 45],
    ['45,5', 'comma', 45.5],
    ['1.234,5', 'comma', 1234.5],
    ['1,234.5', 'point', 1234.5],
    ['1 234', 'point', 1234],
    ['1.234', 'comma', 'unsure'],
    ['1,234', 'comma', 1.234],
    ['1,234', 'point', 'unsure'],
    ['1,234', 'unsure', 'unsure'],
    ['1.234.567', 'comma', 1234567],
    ['45,5', 'point', 'unsure'],
    ['12e1', 'point', 120],
    ['45-50', 'point', null],
    ['45?', 'point', null],
    ['=1+1', 'point', null],
    ['', 'point', null],
  ] as const)('%s in a column of %s', (text, style, value) => expect(readNumber(text, style)).toBe(value))
})
