/** The pieces of a picture, in pixels: an element of SVG and the ink that it is drawn with. */
import { escapeXml, px } from '../draw/svg.ts'
import { type Ink, paintOf, type Rim } from './ink.ts'
import type { Shape } from './drawing.ts'

export interface Piece {
  readonly ink: Ink
  /** of words. Default: none */
  readonly rim?: Rim | undefined
  /** without paint */
  readonly svg: string
}

interface PieceWords {
  readonly tip?: string | undefined
  readonly pick?: string | undefined
}

type Place = readonly [x: number, y: number]

export function rulePiece(
  [x1, y1]: Place,
  [x2, y2]: Place,
  ink: Ink,
  told: PieceWords & { readonly dash?: readonly number[] | undefined } = {},
): Piece {
  return { ink, svg: `<path d="M${px(x1)} ${px(y1)}L${px(x2)} ${px(y2)}"${dashed(told.dash)}${toldOf(told)}/>` }
}

export function pathPiece(runs: readonly (readonly Place[])[], ink: Ink, dash?: readonly number[]): Piece {
  const d = runs.map((run) => run.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('')).join('')
  return { ink, svg: `<path d="${d}"${dashed(dash)}/>` }
}

export function areaPiece(left: number, top: number, width: number, height: number, ink: Ink, told: PieceWords = {}): Piece {
  return { ink, svg: `<rect x="${px(left)}" y="${px(top)}" width="${px(width)}" height="${px(height)}"${toldOf(told)}/>` }
}

export interface WordsLook {
  readonly ink: Ink
  readonly align?: 'start' | 'middle' | 'end'
  readonly rim?: Rim | undefined
  readonly tip?: string | undefined
}

/** One line of text whose middle is at y. */
export function wordsPiece(text: string, x: number, y: number, { ink, align = 'start', rim, tip }: WordsLook): Piece {
  const anchor = align === 'start' ? '' : ` text-anchor="${align}"`
  const middle = y + 0.36 * (paintOf(ink).size ?? 0)
  return { ink, rim, svg: `<text x="${px(x)}" y="${px(middle)}"${anchor}${toldOf({ tip })}>${escapeXml(text)}</text>` }
}

/** by shape: corners around the middle, in radii */
const CORNERS: Readonly<Record<Exclude<Shape, 'circle'>, readonly Place[]>> = {
  square: [
    [-0.9, -0.9],
    [0.9, -0.9],
    [0.9, 0.9],
    [-0.9, 0.9],
  ],
  diamond: [
    [0, -1.25],
    [1.25, 0],
    [0, 1.25],
    [-1.25, 0],
  ],
  up: [
    [0, -1.15],
    [1.15, 0.9],
    [-1.15, 0.9],
  ],
  down: [
    [0, 1.15],
    [1.15, -0.9],
    [-1.15, -0.9],
  ],
  right: [
    [1.15, 0],
    [-0.9, 1.15],
    [-0.9, -1.15],
  ],
  left: [
    [-1.15, 0],
    [0.9, 1.15],
    [0.9, -1.15],
  ],
  cross: [
    [-1.2, -0.4],
    [-0.4, -0.4],
    [-0.4, -1.2],
    [0.4, -1.2],
    [0.4, -0.4],
    [1.2, -0.4],
    [1.2, 0.4],
    [0.4, 0.4],
    [0.4, 1.2],
    [-0.4, 1.2],
    [-0.4, 0.4],
    [-1.2, 0.4],
  ],
}

export function dotPiece(x: number, y: number, radius: number, shape: Shape, ink: Ink, told: PieceWords = {}): Piece {
  if (shape === 'circle') return { ink, svg: `<circle cx="${px(x)}" cy="${px(y)}" r="${px(radius)}"${toldOf(told)}/>` }
  const corners = CORNERS[shape].map(([dx, dy]) => `${px(x + dx * radius)} ${px(y + dy * radius)}`)
  return { ink, svg: `<path d="M${corners.join('L')}Z"${toldOf(told)}/>` }
}

function toldOf({ tip, pick }: PieceWords): string {
  return `${tip === undefined ? '' : ` data-tip="${escapeXml(tip)}"`}${pick === undefined ? '' : ` data-pick="${escapeXml(pick)}"`}`
}

const dashed = (dash: readonly number[] | undefined): string =>
  dash === undefined || dash.length === 0 ? '' : ` stroke-dasharray="${dash.join(' ')}"`
