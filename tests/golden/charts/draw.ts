/** Draws without a browser, and finds texts that lie on each other. */
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { Resvg } from '@resvg/resvg-js'
import { textWidth } from '../../../packages/charts/src/drawing/textWidth.ts'

const fonts = join(dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')), 'ttf')

export interface TextBox {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

const FONT = {
  loadSystemFonts: false,
  fontFiles: ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'].map((file) => join(fonts, file)),
  defaultFontFamily: 'DejaVu Sans',
  sansSerifFamily: 'DejaVu Sans',
}

/** Width and height of the picture, pixels. */
export function sizeOf(svg: string): readonly [number, number] {
  const [, wide, high] = /width="([\d.]+)" height="([\d.]+)"/.exec(svg)!.map(Number) as [number, number, number]
  return [wide, high]
}

/** Boxes of all texts of a drawing. */
export function textsIn(svg: string): TextBox[] {
  return [...svg.matchAll(/<g([^>]*)>(.*?)<\/g>/gs)].flatMap(([, group, inner]) => {
    const size = Number(/font-size="([\d.]+)"/.exec(group!)?.[1] ?? 0)
    const bold = group!.includes('font-weight')
    return [...inner!.matchAll(/<text x="([-\d.]+)" y="([-\d.]+)"([^>]*)>([^<]*)<\/text>/g)].map(([, x, y, more, escaped]) => {
      const text = escaped!.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&')
      const wide = textWidth(text, size, bold)
      const anchor = /text-anchor="(\w+)"/.exec(more!)?.[1] ?? 'start'
      const left = Number(x) - (anchor === 'middle' ? wide / 2 : anchor === 'end' ? wide : 0)
      return { text, left, right: left + wide, top: Number(y) - 0.76 * size, bottom: Number(y) + 0.1 * size }
    })
  })
}

/** Pixels that a text really takes in the face of the tests. */
export function measured(text: string, size: number, bold: boolean): number {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="2000" height="100"><text x="10" y="50" font-family="sans-serif" font-size="${size}" font-weight="${bold ? 700 : 400}">${text}</text></svg>`
  return new Resvg(svg, { font: FONT }).innerBBox()?.width ?? 0
}

/** Pairs of different texts that lie on each other by more than a pixel. */
export function collisions(texts: readonly TextBox[]): string[] {
  return texts.flatMap((a, index) =>
    texts
      .slice(index + 1)
      .filter((b) => a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1)
      .filter((b) => !(a.text === b.text && a.left === b.left && a.top === b.top))
      .map((b) => `"${a.text}" and "${b.text}"`),
  )
}

/** A picture in points; without fonts there is no text in it, and nobody says so. */
export function png(svg: string, withFonts = true): Uint8Array {
  const plain = svg.replace(/var\(--lw-[\w-]+, (#[0-9a-f]{6})\)/g, '$1')
  const font = withFonts ? FONT : { ...FONT, fontFiles: [] }
  return new Resvg(plain, { font, background: 'white' }).render().asPng()
}
