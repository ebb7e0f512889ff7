/** Contrast of two colours by WCAG 2.2. */

/**
 * Relative luminance of an sRGB colour.
 *
 * @param hex   "#rrggbb"
 * @returns     0 (black) … 1 (white)
 * @see W3C, Web Content Accessibility Guidelines 2.2, definition of relative luminance
 * @example luminance('#ffffff') // => 1
 */
export function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => linear(Number.parseInt(hex.slice(at, at + 2), 16) / 255)) as [number, number, number]
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/**
 * Contrast ratio, in either order.
 *
 * @returns     1 (none) … 21 (black on white)
 * @see W3C, Web Content Accessibility Guidelines 2.2, definition of contrast ratio
 * @example contrast('#000000', '#ffffff') // => 21
 */
export function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number]
  return (light + 0.05) / (dark + 0.05)
}

/**
 * The first of `texts` that is readable on `ground` (4.5 : 1), else the one with most contrast.
 *
 * @example readableOn('#332288', ['#1b1b1f', '#ffffff']) // => '#ffffff'
 */
export function readableOn(ground: string, texts: readonly string[]): string {
  const best = [...texts].sort((a, b) => contrast(b, ground) - contrast(a, ground))[0]!
  return texts.find((text) => contrast(text, ground) >= 4.5) ?? best
}

function linear(channel: number): number {
  return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4
}
