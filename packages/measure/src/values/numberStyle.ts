/** Numbers written as text: where their decimals begin, decided for a whole column, and never guessed where two readings are possible. */

/** Decimals behind a point or behind a comma; `mixed`: both occur, each where it can mean nothing else; `unsure`: nothing tells. */
export type NumberStyle = 'point' | 'comma' | 'mixed' | 'unsure'

/** With one sign and three digits behind it, after one to three before: thousands or decimals. */
const EITHER = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/
const PLAIN = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i
const GROUPED = /^[+-]?[1-9]\d{0,2}([.,' ’])\d{3}(\1\d{3})*([.,]\d+)?$/

/**
 * How a column writes its decimals.
 *
 * @param texts      its cells; what is no number is skipped
 * @param separator  of the file: semicolons mostly go with decimal commas; null: none
 * @example numberStyle(['12,5', '1,250'], ';') // => 'comma'
 */
export function numberStyle(texts: readonly string[], separator: string | null): NumberStyle {
  const numbers = [...new Set(texts)]
    .map((text) => text.replace(/[^\d.,+-]*$/, ''))
    .filter((text) => /[.,]/.test(text) && (PLAIN.test(text) || GROUPED.test(text)))
  const decimal = (sign: string): boolean => numbers.some((text) => decimalSign(text) === sign)
  const [point, comma] = [decimal('.'), decimal(',')]
  if (point && comma) return 'mixed'
  if (comma) return 'comma'
  if (point) return 'point'
  // only such as 45.123 or 1,234, or none at all
  const doubtful = numbers.filter((text) => EITHER.test(text))
  if (doubtful.length === 0) return separator === ';' ? 'unsure' : 'point'
  return doubtful.every((text) => text.includes('.')) && separator !== ';' ? 'point' : 'unsure'
}

/** The sign before the decimals, where it can be nothing else. */
function decimalSign(text: string): '.' | ',' | null {
  const last = Math.max(text.lastIndexOf('.'), text.lastIndexOf(','))
  const sign = text[last] as '.' | ','
  if (EITHER.test(text)) return null
  const signs = [...text].filter((each) => each === '.' || each === ',')
  if (signs.length === 1) return sign
  // 1.234,5: the last one; 1.234.567: thousands
  return new Set(signs).size === 2 && signs.indexOf(sign) === signs.length - 1 ? sign : null
}

/**
 * The number of a text.
 *
 * @returns null: it is none; 'unsure': it could be thousands or decimals
 * @example readNumber('1.234,5', 'comma') // => 1234.5
 */
export function readNumber(text: string, style: NumberStyle): number | null | 'unsure' {
  if (/^\d{1,15}$/.test(text)) return Number(text)
  const plain = PLAIN.test(text)
  if (!plain && !GROUPED.test(text)) return null
  if (!/[.,]/.test(text)) return Number(text.replaceAll(/[' ’]/g, ''))
  const own = decimalSign(text)
  if (own === null && plain) {
    if (style === 'mixed' || style === 'unsure') return 'unsure'
    const sign = style === 'comma' ? ',' : '.'
    // 1.234 in a column of decimal commas: thousands, or a slip
    return text.includes(sign) ? Number(text.replace(sign, '.')) : 'unsure'
  }
  if (own === null) return Number(text.replaceAll(/[.,' ’]/g, ''))
  if ((style === 'point' && own === ',') || (style === 'comma' && own === '.')) return 'unsure'
  const other = own === '.' ? ',' : '.'
  const value = Number(text.replaceAll(other, '').replaceAll(/[' ’]/g, '').replace(own, '.'))
  return Number.isFinite(value) ? value : null
}
