/** What a number format of a workbook makes of a number: a number, a clock time, a length of time, or a day. */

/** What a number means by its format. */
export interface NumberFormat {
  readonly is: 'number' | 'clock' | 'elapsed' | 'date'
  /** seconds are shown */
  readonly seconds: boolean
}

const NUMBER: NumberFormat = { is: 'number', seconds: false }

/** Formats without a code in the file, by number. (ECMA-376, 18.8.30) */
const BUILT_IN: Readonly<Record<number, string>> = {
  14: 'mm-dd-yy',
  15: 'd-mmm-yy',
  16: 'd-mmm',
  17: 'mmm-yy',
  18: 'h:mm AM/PM',
  19: 'h:mm:ss AM/PM',
  20: 'h:mm',
  21: 'h:mm:ss',
  22: 'm/d/yy h:mm',
  45: 'mm:ss',
  46: '[h]:mm:ss',
  47: 'mmss.0',
}

/**
 * By its number and the codes that the file brings.
 *
 * @param own  codes of the file, by number
 * @example numberFormat(45, new Map()).is // => 'clock'
 */
export function numberFormat(id: number, own: ReadonlyMap<number, string>): NumberFormat {
  const code = own.get(id) ?? BUILT_IN[id]
  if (code === undefined) return NUMBER
  const elapsed = /\[(h+|m+|s+)\]/i.test(code)
  // literal texts, colours, conditions and languages are no letters of a date
  const letters = code
    .split(';')[0]!
    .replaceAll(/"[^"]*"|\\.|_.|\*./g, '')
    .replaceAll(/\[(h+|m+|s+)\]/gi, '$1')
    .replaceAll(/\[[^\]]*\]/g, '')
    .replaceAll(/AM\/PM|A\/P/gi, 'h')
    .toLowerCase()
  const seconds = letters.includes('s')
  if (elapsed) return { is: 'elapsed', seconds }
  if (/[yd]/.test(letters) || (letters.includes('m') && !/[hs]/.test(letters))) return { is: 'date', seconds }
  return /[hs]/.test(letters) ? { is: 'clock', seconds } : NUMBER
}
