/** A look at a text before the parser sees it: how deep it is nested and how many parts it has. */

/** levels; a scenario needs fewer than ten */
export const DEPTH_MAX = 64

/** Brackets and dashes counted without parsing; quotes are not looked at, which a scenario never comes near. */
export function measure(text: string): { depth: number; deepestAt: number; parts: number } {
  let open = 0
  let depth = 0
  let deepestAt = 0
  let parts = 0
  let run = 0
  let leading = true
  const note = (level: number, at: number): void => {
    if (level > depth) {
      depth = level
      deepestAt = at
    }
  }
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]!
    if (sign === '[' || sign === '{') note(++open + run, at)
    else if (sign === ']' || sign === '}') open = Math.max(0, open - 1)
    if (sign === '\n') {
      run = 0
      leading = true
    } else if (leading && (sign === '-' || sign === '?')) note(++run + open, at)
    else if (sign !== ' ' && sign !== '\t') leading = false
    if (PART.has(sign)) parts++
  }
  return { depth, deepestAt, parts }
}

const PART = new Set('[]{},:\n"\'#&*!|>')
