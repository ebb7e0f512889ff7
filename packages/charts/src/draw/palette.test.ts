import { describe, expect, test } from 'vitest'
import { contrast, luminance } from './contrast.ts'
import { DARK, LIGHT, PRINT } from './palette.ts'

/** W3C, Web Content Accessibility Guidelines 2.2: 1.4.3 text 4.5 : 1, 1.4.11 graphics 3 : 1 */
const TEXT = 4.5
const MARK = 3

describe.each([
  ['light', LIGHT],
  ['dark', DARK],
])('%s', (_, look) => {
  test('text is readable on paper', () => {
    for (const text of [look.ink, look.quiet, look.accent]) expect(contrast(text, look.paper)).toBeGreaterThanOrEqual(TEXT)
  })
  test('secondary text and edges are readable on the band too', () => {
    for (const text of [look.ink, look.quiet, look.accent]) expect(contrast(text, look.band)).toBeGreaterThanOrEqual(MARK)
  })
  test('every state, or the hairline around it, stands out from paper', () => {
    for (const state of look.states)
      expect(Math.max(contrast(state, look.paper), contrast(look.ink, look.paper))).toBeGreaterThanOrEqual(MARK)
    const alone = look.states.filter((state) => contrast(state, look.paper) >= MARK).length
    expect(alone).toBe(look === DARK ? 10 : 6)
  })
  test('words in the bars are readable', () => {
    look.states.forEach((state, index) => {
      expect(contrast(look.onStates[index]!, state)).toBeGreaterThanOrEqual(TEXT)
    })
  })
  test('the ramp goes from paper by lightness alone, and text on it is readable', () => {
    const lightness = look.ramp.map(luminance)
    expect(lightness).toEqual(lightness.toSorted((a, b) => (look === DARK ? a - b : b - a)))
    expect(contrast(look.ramp.at(-1)!, look.paper)).toBeGreaterThanOrEqual(MARK)
    look.ramp.forEach((step, index) => {
      expect(contrast(look.onRamp[index]!, step)).toBeGreaterThanOrEqual(TEXT)
      const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(step.slice(at, at + 2), 16)) as [number, number, number]
      expect(Math.max(r, g, b) - Math.min(r, g, b)).toBeLessThanOrEqual(12)
    })
  })
  test('the two-sided ramp: zero near paper, its ends marks', () => {
    expect(contrast(look.twoSided[3]!, look.paper)).toBeLessThan(1.5)
    for (const end of [look.twoSided[0]!, look.twoSided.at(-1)!]) expect(contrast(end, look.paper)).toBeGreaterThanOrEqual(MARK)
  })
})

test('the dark states have the hues of the light ones, and are lighter but for the pause', () => {
  LIGHT.states.slice(0, 9).forEach((light, index) => {
    const dark = DARK.states[index]!
    expect(luminance(dark)).toBeGreaterThan(luminance(light))
    const away = Math.abs(hue(light) - hue(dark))
    expect(Math.min(away, 360 - away)).toBeLessThanOrEqual(16)
  })
})

test('print is black on white, states by hatching', () => {
  expect([PRINT.ink, PRINT.paper, PRINT.accent, PRINT.plate]).toEqual(['#000000', '#ffffff', '#000000', '#ffffff'])
  expect(PRINT.states.every((state, index) => state === `url(#lw-hatch-${index})`)).toBe(true)
})

/** degrees, by the hexagon of the HSL model */
function hue(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as [number, number, number]
  const most = Math.max(r, g, b)
  const span = most - Math.min(r, g, b)
  const sixth = most === r ? ((g - b) / span + 6) % 6 : most === g ? (b - r) / span + 2 : (r - g) / span + 4
  return 60 * sixth
}
