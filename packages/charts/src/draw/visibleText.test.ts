import { describe, expect, test } from 'vitest'
import { visibleLine, visibleText } from './visibleText.ts'

const code = (...points: number[]): string => String.fromCodePoint(...points)

describe('what a terminal would carry out is shown instead', () => {
  // ECMA-48 (1991) §5.2: C0 is 00/00 to 01/15, C1 in an 8-bit code is 08/00 to 09/15
  test('every control of C0 and C1, and DEL; the line end and the tab stay', () => {
    const controls = [...Array(0x20).keys(), 0x7f, ...Array.from({ length: 0x20 }, (_, index) => 0x80 + index)]
    for (const point of controls.filter((each) => each !== 0x0a && each !== 0x09))
      expect(visibleText(`a${code(point)}b`)).toBe(`a\\u${point.toString(16).padStart(4, '0')}b`)
    expect(visibleText('a\n\tb')).toBe('a\n\tb')
  })

  // Unicode Standard Annex #9, table 4: the explicit formatting characters
  test('signs that turn the direction of text around', () =>
    expect(visibleText(`a${code(0x202e)}b${code(0x2066)}`)).toBe('a\\u202eb\\u2066'))

  test('JSON says the same before and after', () => {
    const value = { name: `x${code(0x9b)}31m${code(0x7f)}${code(0x2028)}\u001b` }
    const text = visibleText(JSON.stringify(value, null, 2))
    expect(text).not.toMatch(/(?!\n)\p{Cc}/u)
    expect(JSON.parse(text)).toEqual(value)
  })

  test('ordinary text stays as it is, in any script', () => {
    const text = 'Größe ± 5 %, 330\u202f000, 負荷, “x”, 👷'
    expect(visibleText(text)).toBe(text)
    expect(visibleLine(text)).toBe(text)
  })
})

test('on one line: line ends and tabs become one blank', () => expect(visibleLine('a \r\n\t b\u0085c\nd')).toBe('a b c d'))
