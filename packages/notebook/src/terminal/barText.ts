/** one eighth to seven eighths of a character, then a whole one: Unicode block elements U+258F … U+2588 */
const EIGHTHS = ['', '▏', '▎', '▍', '▌', '▋', '▊', '▉'] as const
const WHOLE = '█'

/**
 * A bar of block characters, to an eighth of a character. A number below zero has its sign before it; one that is not nothing shows at least an eighth.
 *
 * @param value    null: not known, no bar
 * @param largest  the value of a full bar, ≥ |value|
 * @param columns  of a full bar
 * @example barText(5, 8, 4) // => '██▌'
 */
export function barText(value: number | null, largest: number, columns: number): string {
  if (value === null || value === 0 || !(largest > 0)) return ''
  const eighths = Math.max(1, Math.round((8 * columns * Math.abs(value)) / largest))
  const bar = WHOLE.repeat(Math.floor(eighths / 8)) + EIGHTHS[eighths % 8]!
  return value < 0 ? `−${bar}` : bar
}
