/** How wide a text is, where nothing can measure it: by the advance widths of a wide sans-serif face, so that others take less. */

/** hundredths of an em, from the blank to the tilde: DejaVu Sans 2.37, table `hmtx` */
const ADVANCES = [
  32, 40, 46, 84, 64, 95, 78, 27, 39, 39, 50, 84, 32, 36, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 34, 34, 84, 84, 84, 53, 100, 68,
  69, 70, 77, 63, 58, 77, 75, 29, 29, 66, 56, 86, 75, 79, 60, 79, 69, 63, 61, 73, 68, 99, 69, 61, 69, 39, 34, 39, 84, 50, 50, 61, 63, 55,
  63, 62, 35, 63, 63, 28, 28, 58, 28, 97, 63, 61, 63, 63, 41, 52, 39, 63, 59, 82, 59, 59, 52, 64, 34, 64, 84,
]
const FIRST = 32
/** thin and no-break blanks; other letters are as wide as the widest usual ones */
const BLANKS: Readonly<Record<string, number>> = { '\u202f': 20, '\u00a0': 32, '\u2009': 20, '–': 50, '·': 32, '−': 84, '±': 84 }
const OTHER = 100
/** bold letters are wider by about a ninth in the same face */
const BOLD = 1.12

/**
 * Pixels that a line of text takes, or a little less.
 *
 * @example textWidth('Load', 10) // => 24.1
 */
export function textWidth(text: string, sizePixels: number, bold = false): number {
  let hundredths = 0
  for (const letter of text) hundredths += BLANKS[letter] ?? ADVANCES[letter.codePointAt(0)! - FIRST] ?? OTHER
  return (hundredths * sizePixels * (bold ? BOLD : 1)) / 100
}

/**
 * A text that fits, its end cut off and marked by "…" where it must be.
 *
 * @example shortened('Refrigerant parts', 60, 10) // => 'Refrigera…'
 */
export function shortened(text: string, pixels: number, sizePixels: number, bold = false): string {
  if (textWidth(text, sizePixels, bold) <= pixels) return text
  const letters = [...text]
  while (letters.length > 1 && textWidth(`${letters.join('').trimEnd()}…`, sizePixels, bold) > pixels) letters.pop()
  return `${letters.join('').trimEnd()}…`
}
