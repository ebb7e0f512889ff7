/** SVG to PNG without a browser, with a font of its own: with none no text would be drawn, and nobody would be told. */
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

/** pixels of the picture for one of the drawing: sharp on paper, too */
const ZOOM = 2

/**
 * A picture of a drawing that stands alone.
 *
 * @example [...(await pngOf('<svg xmlns="http://www.w3.org/2000/svg" width="2" height="2"/>')).subarray(1, 4)] // => [80, 78, 71]
 */
export async function pngOf(svg: string): Promise<Uint8Array> {
  const { Resvg } = await import('@resvg/resvg-js')
  const folder = join(dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')), 'ttf')
  const font = {
    loadSystemFonts: false,
    fontFiles: ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'].map((name) => join(folder, name)),
    defaultFontFamily: 'DejaVu Sans',
    sansSerifFamily: 'DejaVu Sans',
  }
  return new Resvg(svg, { font, background: 'white', fitTo: { mode: 'zoom', value: ZOOM } }).render().asPng()
}
