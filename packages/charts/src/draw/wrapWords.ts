/** Text in lines of limited width, where nothing can measure it. */

/** em per character; an upper estimate for common sans-serif faces, bold ones too */
const EM_PER_CHARACTER = 0.66

/**
 * Pixels that a text needs, a little more than it takes.
 *
 * @example textPixels('Load', 10) // => 26.4
 */
export function textPixels(text: string, sizePixels: number): number {
  return [...text].length * EM_PER_CHARACTER * sizePixels
}

/**
 * Breaks a text between words; what does not fit is shortened, with "…".
 *
 * @param linesMax  ≥ 1
 * @example wrapWords('Refrigerant parts', 100, 13, 2) // => ['Refrigerant', 'parts']
 */
export function wrapWords(text: string, pixels: number, sizePixels: number, linesMax: number): string[] {
  const fits = Math.max(2, Math.floor(pixels / (EM_PER_CHARACTER * sizePixels)))
  const lines: string[] = []
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    const last = lines.at(-1)
    if (last !== undefined && [...last].length + 1 + [...word].length <= fits) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  const kept = lines.slice(0, linesMax)
  if (lines.length > linesMax) kept[linesMax - 1] = `${kept[linesMax - 1]!} ${lines.slice(linesMax).join(' ')}`
  return kept.map((line) =>
    [...line].length <= fits
      ? line
      : `${[...line]
          .slice(0, fits - 1)
          .join('')
          .trimEnd()}…`,
  )
}
