/** Marks of a drawing as pieces, with the scales of its axes. */
import { paintOf } from './ink.ts'
import type { Area, At, Mark, Path, Rule, Words } from './drawing.ts'
import { areaPiece, dotPiece, pathPiece, type Piece, rulePiece, wordsPiece } from './piece.ts'
import type { Scale } from './scale.ts'
import { shortened, textWidth } from './textWidth.ts'

/** pixels from one line of text to the next */
const LINE = 15
/** pixels free at each side of words in an area */
const WORDS_ROOM = 3
/** pixels between two texts on one line */
const BESIDE = 12

/** @param widthPixels  of the picture: no words reach out of it */
export function markPieces(mark: Mark, x: Scale, y: Scale, widthPixels: number): Piece[] {
  switch (mark.mark) {
    case 'area':
      return areaPieces(mark, x, y)
    case 'path':
      return pathPieces(mark, x, y)
    case 'rule':
      return rulePieces(mark, x, y)
    case 'dot': {
      const [atX, atY] = [x.of(mark.x) + (mark.dx ?? 0), y.of(mark.y) + (mark.dy ?? 0)]
      return [dotPiece(atX, atY, mark.radius ?? 4, mark.shape ?? 'circle', mark.ink, mark)]
    }
    case 'words':
      return wordsPieces(mark, x, y, widthPixels)
  }
}

function areaPieces(mark: Area, x: Scale, y: Scale): Piece[] {
  const [left, right] = span(mark.x, x)
  const [top, bottom] = span(mark.y, y)
  if (!(right > left) || !(bottom > top)) return []
  const ink = mark.wordsInk ?? 'words'
  const room = right - left - 2 * WORDS_ROOM
  const fits = mark.words?.find((text) => textWidth(text, paintOf(ink).size ?? 0) <= room)
  const area = areaPiece(left, top, right - left, bottom - top, mark.ink, mark)
  if (fits === undefined || fits === '') return [area]
  return [
    area,
    wordsPiece(fits, (left + right) / 2, (top + bottom) / 2, {
      ink,
      align: 'middle',
      rim: ink.startsWith('on state ') ? 'plate' : undefined,
      tip: mark.tip,
    }),
  ]
}

/** Ends in pixels, the smaller first, no further than the area. */
function span([a, b]: readonly [At, At], scale: Scale): readonly [number, number] {
  const [from, to] = [scale.within(a), scale.within(b)]
  return from <= to ? [from, to] : [to, from]
}

function rulePieces(mark: Rule, x: Scale, y: Scale): Piece[] {
  const from: [number, number] = [x.within(mark.x[0]) + (mark.dx?.[0] ?? 0), y.within(mark.y[0])]
  const to: [number, number] = [x.within(mark.x[1]) + (mark.dx?.[1] ?? 0), y.within(mark.y[1])]
  const level = from[1] === to[1]
  const end = mark.ends ?? 0
  const across = (at: readonly [number, number]): Piece =>
    level
      ? rulePiece([at[0], at[1] - end], [at[0], at[1] + end], mark.ink)
      : rulePiece([at[0] - end, at[1]], [at[0] + end, at[1]], mark.ink)
  return [rulePiece(from, to, mark.ink, mark), ...(end === 0 ? [] : [across(from), across(to)])]
}

/** Pieces of the line that lie within the area, from edge to edge. */
function pathPieces({ points, ink, dash }: Path, x: Scale, y: Scale): Piece[] {
  const placed = points.map(([atX, atY]): [number, number] => [x.of(atX), y.of(atY)])
  const runs: [number, number][][] = []
  for (let index = 1; index < placed.length; index += 1) {
    const cut = clipped(placed[index - 1]!, placed[index]!, x, y)
    if (cut === null) continue
    const last = runs.at(-1)?.at(-1)
    if (last !== undefined && last[0] === cut[0][0] && last[1] === cut[0][1]) runs.at(-1)!.push(cut[1])
    else runs.push([...cut])
  }
  return runs.length === 0 ? [] : [pathPiece(runs, ink, dash)]
}

type Place = [number, number]

/** The part of a straight line within the area; null: none. (Liang and Barsky 1984) */
function clipped(from: Place, to: Place, x: Scale, y: Scale): [Place, Place] | null {
  let [enter, leave] = [0, 1]
  for (const [axis, scale] of [x, y].entries()) {
    const [low, high] = [Math.min(scale.fromPixels, scale.toPixels), Math.max(scale.fromPixels, scale.toPixels)]
    const way = to[axis]! - from[axis]!
    for (const [step, room] of [
      [-way, from[axis]! - low],
      [way, high - from[axis]!],
    ] as const) {
      if (step === 0) {
        if (room < 0) return null
      } else if (step < 0) enter = Math.max(enter, room / step)
      else leave = Math.min(leave, room / step)
    }
  }
  if (enter > leave) return null
  const at = (share: number): Place => [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
  return [enter === 0 ? from : at(enter), leave === 1 ? to : at(leave)]
}

function wordsPieces(mark: Words, x: Scale, y: Scale, widthPixels: number): Piece[] {
  const { size = 0, bold = false } = paintOf(mark.ink)
  const lines = typeof mark.text === 'string' ? [mark.text] : mark.text
  const edge = mark.edge ?? 'middle'
  const first = edge === 'middle' ? (-LINE * (lines.length - 1)) / 2 : edge === 'top' ? size / 2 : -size / 2 - LINE * (lines.length - 1)
  const most = mark.beside === undefined ? null : Math.abs(x.toPixels - x.fromPixels) - textWidth(mark.beside, size, bold) - BESIDE
  const room = mark.room === undefined ? null : Math.abs(x.of(mark.room) - x.of(0)) - WORDS_ROOM
  if (room !== null && lines.some((line) => textWidth(line, size, bold) > room)) return []
  return lines.map((line, index) => {
    const text = most === null ? line : shortened(line, most, size, bold)
    const atY = y.of(mark.y) + (mark.dy ?? 0) + first + LINE * index
    const tip = mark.tip ?? (text === line ? undefined : line)
    const { atX, align } = wordsAt(mark, x.of(mark.x), textWidth(text, size, bold), widthPixels)
    return wordsPiece(text, atX, atY, { ink: mark.ink, align, rim: mark.rim, tip })
  })
}

type Align = NonNullable<Words['align']>

/** Where a line of words stands: as asked, on the other side where it would reach out of the picture, else moved back into it. */
function wordsAt({ dx = 0, align = 'start' }: Words, at: number, wide: number, width: number): { atX: number; align: Align } {
  const from = (x: number, to: Align): number => x - (to === 'start' ? 0 : to === 'end' ? wide : wide / 2)
  const fits = (left: number): boolean => left >= 0 && left + wide <= width
  const other: Align = align === 'start' ? 'end' : 'start'
  if (fits(from(at + dx, align))) return { atX: at + dx, align }
  if (align !== 'middle' && fits(from(at - dx, other))) return { atX: at - dx, align: other }
  const left = Math.max(0, Math.min(width - wide, from(at + dx, align)))
  return { atX: left + (at + dx - from(at + dx, align)), align }
}
