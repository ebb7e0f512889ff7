import type { Drawing } from '@loopwright/charts'
import { drawingSvg } from '@loopwright/charts/draw'

/** pixels: beside its words on a wide screen, and on paper; on a screen of 360 */
const WIDTHS = { wide: 720, narrow: 328 }

/** The pictures of a drawing; the style sheet shows the one that fits. */
export function drawingHtml(drawing: Drawing): string {
  return Object.entries(WIDTHS)
    .map(([name, widthPixels]) => `<div class="${name}">${drawingSvg(drawing, { widthPixels })}</div>`)
    .join('')
}
