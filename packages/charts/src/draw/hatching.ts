/** Ten patterns in black and white, one for each state of a station: print needs no colour. */
import { STATES } from './states.ts'

/** useful time dense and dark, waiting open, pauses nearly white; by STATES; each fills a tile of 8 × 8 pixels */
const STROKES: readonly string[] = [
  '<rect width="8" height="8" fill="#3a3a3a"/>',
  '<path d="M0 2H8M0 6H8" stroke="#000" stroke-width="2"/>',
  '<circle cx="4" cy="4" r="1.6"/>',
  '<path d="M0 4H8" stroke="#000"/>',
  '<path d="M4 0V8" stroke="#000"/>',
  '<path d="M-2 6L2 10M-2 -2L10 10M6 -2L10 2" stroke="#000" stroke-width="1.6"/>',
  '<rect width="8" height="8" fill="#b4b4b4"/>',
  '<circle cx="2" cy="2" r=".8"/><circle cx="6" cy="6" r=".8"/>',
  '<path d="M0 0L8 8M8 0L0 8" stroke="#000" stroke-width="1.2"/>',
  '',
]

/**
 * The pattern elements that the look `print` (and `page` on paper) refers to.
 *
 * @returns a `<defs>` element
 * @example hatchingDefs().startsWith('<defs>') // => true
 */
export function hatchingDefs(): string {
  const patterns = STATES.map(
    (_, index) =>
      `<pattern id="lw-hatch-${index}" width="8" height="8" patternUnits="userSpaceOnUse"><rect width="8" height="8" fill="#fff"/>${STROKES[index]!}</pattern>`,
  )
  return `<defs>${patterns.join('')}</defs>`
}

/**
 * A hidden `<svg>` with the hatchings. Goes into the page once, anywhere in the body.
 *
 * @example hatchings().includes('aria-hidden="true"') // => true
 */
export function hatchings(): string {
  return `<svg width="0" height="0" class="lw-unseen" aria-hidden="true" focusable="false">${hatchingDefs()}</svg>`
}
