/** Where the names of stations stand: outside the band, beside their bracket, none on another. */
import type { Point } from '../draw/svg.ts'
import { textPixels, wrapWords } from '../draw/wrapWords.ts'

/** A name to place; pixels. */
export interface Wanted {
  readonly title: string
  /** second line: duty words and the like; '': none */
  readonly under: string
  /** in the accent colour. Default: false */
  readonly moved?: boolean
  /** outer edge of the bracket, in its middle */
  readonly at: Point
  /** highest and lowest pixel of the bracket */
  readonly top: number
  readonly bottom: number
  readonly outward: Point
}

export interface Name {
  /** of the title, shortened where it must be */
  readonly lines: readonly string[]
  /** below them, not in bold */
  readonly under: readonly string[]
  readonly anchor: 'start' | 'middle' | 'end'
  readonly x: number
  /** baseline of the first line */
  readonly y: number
  /** ends of a thin line from the bracket to the name; null: the name stands beside it */
  readonly lead: readonly [Point, Point] | null
  readonly moved: boolean
}

export type Side = 'top' | 'bottom' | 'left' | 'right'

export const NAME_SIZE = 13
export const LINE_PIXELS = 16
const GAP = 8

/**
 * @example sideOf({ x: 0, y: -1 }) // => 'top'
 */
export function sideOf({ x, y }: Point): Side {
  if (Math.abs(y) > 0.97) return y < 0 ? 'top' : 'bottom'
  return x < 0 ? 'left' : 'right'
}

/**
 * Names on each side in as many lines as the distance to the next name allows.
 *
 * @param room  pixels that names may take to the left and to the right of the loop
 */
export function placeNames(wanted: readonly Wanted[], room: number): Name[] {
  return (['top', 'right', 'bottom', 'left'] as const).flatMap((side) => {
    const here = wanted.filter(({ outward }) => sideOf(outward) === side)
    return side === 'top' || side === 'bottom' ? inRow(here, side) : inColumn(here, side, room)
  })
}

function inRow(wanted: readonly Wanted[], side: 'top' | 'bottom'): Name[] {
  const sorted = wanted.toSorted((a, b) => a.at.x - b.at.x)
  const gaps = sorted.slice(1).map(({ at }, index) => at.x - sorted[index]!.at.x)
  const nearest = Math.min(170, ...gaps)
  const tiers = nearest < 76 ? Math.min(3, Math.ceil(76 / nearest)) : 1
  const pixels = nearest * tiers - 8
  const blocks = sorted.map(({ title }) => wrapWords(title, pixels, NAME_SIZE, 3))
  const unders = sorted.map(({ under }) => wrapWords(under, pixels, NAME_SIZE, 2))
  const tierPixels = Math.max(1, ...blocks.map(({ length }, index) => length + unders[index]!.length)) * LINE_PIXELS + 6
  return sorted.map(({ at, top, bottom, moved = false }, index): Name => {
    const [lines, under] = [blocks[index]!, unders[index]!]
    const count = lines.length + under.length
    const shift = (index % tiers) * tierPixels
    const y = side === 'top' ? top - GAP + 2 - shift - (count - 1) * LINE_PIXELS : bottom + GAP + shift + LINE_PIXELS - 6
    const end: Point = { x: at.x, y: side === 'top' ? top - shift - 2 : bottom + shift + 2 }
    const lead = shift === 0 ? null : ([at, end] as const)
    return { lines, under, anchor: 'middle', x: at.x, y, lead, moved }
  })
}

function inColumn(wanted: readonly Wanted[], side: 'left' | 'right', room: number): Name[] {
  const sorted = wanted.toSorted((a, b) => a.at.y - b.at.y)
  const away = side === 'left' ? -GAP : GAP
  let free = Number.NEGATIVE_INFINITY
  return sorted.map(({ title, under, at, outward, moved: hasMoved = false }, index): Name => {
    const next = sorted[index + 1]?.at.y ?? Number.POSITIVE_INFINITY
    const below = wrapWords(under, room - GAP, NAME_SIZE, 2)
    const linesMax = Math.min(3, Math.max(1, Math.floor((next - at.y) / LINE_PIXELS) - below.length))
    const lines = wrapWords(title, room - GAP, NAME_SIZE, linesMax)
    const joined = under !== '' && linesMax === 1 && textPixels(`${lines[0]!} ${under}`, NAME_SIZE) <= room - GAP
    const shown = joined ? [`${lines[0]!} ${under}`] : lines
    const count = shown.length + (joined ? 0 : below.length)
    const wish = at.y + (outward.y - 1) * ((count * LINE_PIXELS) / 2)
    const top = Math.max(free, wish)
    free = top + count * LINE_PIXELS + 2
    const moved = top - wish > 4
    const x = at.x + away * (moved ? 2 : 1)
    const lead = moved ? ([at, { x: x - away / 4, y: top + LINE_PIXELS / 2 }] as const) : null
    return {
      lines: shown,
      under: joined ? [] : below,
      anchor: side === 'left' ? 'end' : 'start',
      x,
      y: top + LINE_PIXELS - 4,
      lead,
      moved: hasMoved,
    }
  })
}
