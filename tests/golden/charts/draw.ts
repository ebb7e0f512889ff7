/** Draws a spec or a plan without a browser, and finds texts that lie on each other. */
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { type Look, vegaConfig } from '@loopwright/charts'
import { Resvg } from '@resvg/resvg-js'
import * as vega from 'vega'
import { expressionInterpreter } from 'vega-interpreter'
import { compile, type TopLevelSpec } from 'vega-lite'

const fonts = join(dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')), 'ttf')

/** Everything that vega-lite or vega warn of, in order. */
export interface Drawing {
  readonly svg: string
  readonly texts: readonly TextBox[]
  readonly warnings: readonly string[]
}

export interface TextBox {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

function collector(): { logger: vega.LoggerInterface; warnings: string[] } {
  const warnings: string[] = []
  const logger: vega.LoggerInterface = {
    level: ((value?: number) => (value === undefined ? 0 : logger)) as vega.LoggerInterface['level'],
    error: (...of) => {
      warnings.push(of.join(' '))
      return logger
    },
    warn: (...of) => {
      warnings.push(of.join(' '))
      return logger
    },
    info: () => logger,
    debug: () => logger,
  }
  return { logger, warnings }
}

/** The messages of compiling alone, with the width that the page gives. */
export function compileWarnings(spec: TopLevelSpec, look: Look | null): string[] {
  const { logger, warnings } = collector()
  compile(spec, look === null ? { logger } : { logger, config: vegaConfig(look) })
  return warnings
}

/** A view of the spec in a container of so many pixels; expressions are interpreted, never compiled. */
export function viewOf(spec: TopLevelSpec, look: Look, width: number): { view: vega.View; warnings: string[] } {
  const { logger, warnings } = collector()
  const fixed = { ...spec, width } as TopLevelSpec
  const compiled = compile(fixed, { logger, config: vegaConfig(look) }).spec
  const view = new vega.View(vega.parse(compiled, undefined, { ast: true }), { renderer: 'none', expr: expressionInterpreter, logger })
  return { view, warnings }
}

export async function draw(spec: TopLevelSpec, look: Look, width: number): Promise<Drawing> {
  const { view, warnings } = viewOf(spec, look, width)
  const svg = await view.toSVG()
  const texts = textsIn((view.scenegraph() as unknown as { readonly root: Item }).root, view.origin())
  view.finalize()
  return { svg, texts, warnings }
}

interface Item {
  readonly marktype?: string
  readonly items?: readonly Item[]
  readonly x?: number
  readonly y?: number
  readonly text?: string | readonly string[]
  readonly align?: string
  readonly baseline?: string
  readonly angle?: number
  readonly dx?: number
  readonly dy?: number
  readonly fontSize?: number
  readonly limit?: number
  readonly opacity?: number
  readonly fill?: string
}

/** em per character of a common sans-serif face, on average */
const EM = 0.55

/** Boxes of all texts that show something, by an estimate of their width. */
function textsIn(root: Item, origin: readonly number[]): TextBox[] {
  const found: TextBox[] = []
  const walk = (item: Item, x: number, y: number, marktype: string | undefined): void => {
    if (item.marktype !== undefined) {
      for (const each of item.items ?? []) walk(each, x, y, item.marktype)
      return
    }
    const [atX, atY] = [x + (item.x ?? 0), y + (item.y ?? 0)]
    if (marktype === 'text') found.push(...boxOf(item, atX, atY))
    else for (const each of item.items ?? []) walk(each, atX, atY, undefined)
  }
  for (const each of root.items ?? []) walk(each, origin[0]!, origin[1]!, each.marktype)
  return found
}

function boxOf(item: Item, x: number, y: number): TextBox[] {
  const lines = (typeof item.text === 'string' ? [item.text] : (item.text ?? []).map(String)).filter((line) => line.trim() !== '')
  if (lines.length === 0 || item.opacity === 0 || item.fill === 'transparent') return []
  const size = item.fontSize ?? 11
  const long = Math.max(...lines.map((line) => line.length)) * EM * size
  const wide = item.limit !== undefined && item.limit > 0 ? Math.min(long, item.limit) : long
  const high = size * (1 + 1.15 * (lines.length - 1))
  const along = item.align === 'center' ? -wide / 2 : item.align === 'right' ? -wide : 0
  const down = item.baseline === 'top' ? 0 : item.baseline === 'middle' ? -size / 2 : item.baseline === 'bottom' ? -size : -0.8 * size
  const upright = item.angle !== undefined && item.angle !== 0
  const [left, top] = [x + (item.dx ?? 0), y + (item.dy ?? 0)]
  const box = upright
    ? { left: left + down, right: left + down + high, top: top - along - wide, bottom: top - along }
    : { left: left + along, right: left + along + wide, top: top + down, bottom: top + down + high }
  return [{ text: lines.join(' '), ...box }]
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
  const fontFiles = withFonts ? ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'].map((file) => join(fonts, file)) : []
  const plain = svg.replace(/var\(--lw-[\w-]+, (#[0-9a-f]{6})\)/g, '$1')
  const font = { loadSystemFonts: false, fontFiles, defaultFontFamily: 'DejaVu Sans', sansSerifFamily: 'DejaVu Sans' }
  return new Resvg(plain, { font, background: 'white' }).render().asPng()
}
