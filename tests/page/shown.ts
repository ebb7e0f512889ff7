/** Numbers as a page shows them, read back. */

/** A shown number without its unit and its thin spaces. */
export function numberIn(text: string): number {
  return Number(
    text
      .replace(/[\s\u202f\u00a0]/g, '')
      .replace('\u2212', '-')
      .replace(/%$/, ''),
  )
}

/** True of a text that shows this value: equal within half of its last digit, or "< 1" of a little and "> 99" of nearly all. */
export function shownNumber(value: number): (text: string | undefined) => boolean {
  return (text) => {
    if (text === undefined) return false
    const limit = /^([<>])\s*(.*)$/.exec(text.trim())
    if (limit) return limit[1] === '<' ? value > 0 && value < numberIn(limit[2]!) : value > numberIn(limit[2]!) && value < 100
    const decimals = /\.(\d+)/.exec(text)?.[1]?.length ?? 0
    return Math.abs(numberIn(text) - value) <= 0.5 * 10 ** -decimals + 1e-9
  }
}
