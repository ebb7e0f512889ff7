/** The middle of a band on paper, piece by piece: straights and bends. Lengths in metres, angles in radians; x to the right, y down. */
import type { Point } from '../draw/svg.ts'

export interface Piece {
  readonly from: Point
  /** of travel, from the x axis, clockwise */
  readonly heading: number
  /** along the middle */
  readonly length: number
  /** radius of a bend: above 0 to the right, below 0 to the left; null: straight */
  readonly radius: number | null
}

export const isBend = ({ radius }: Piece): boolean => radius !== null

export function direction(angle: number): Point {
  return { x: Math.cos(angle), y: Math.sin(angle) }
}

/** a + b·times */
export function plus(a: Point, b: Point, times: number): Point {
  return { x: a.x + b.x * times, y: a.y + b.y * times }
}

/**
 * @param along  from the start of the piece
 * @example headingAt({ from: { x: 0, y: 0 }, heading: 0, length: Math.PI, radius: 1 }, Math.PI) // => 3.141592653589793
 */
export function headingAt({ heading, radius }: Piece, along: number): number {
  return radius === null ? heading : heading + along / radius
}

/**
 * @param along  from the start of the piece
 * @param left   to the left of the middle, seen in the direction of travel
 * @example pointAt({ from: { x: 0, y: 0 }, heading: 0, length: 2, radius: null }, 1, 0.5) // => { x: 1, y: -0.5 }
 */
export function pointAt(piece: Piece, along: number, left = 0): Point {
  const { from, heading, radius } = piece
  if (radius === null) return plus(plus(from, direction(heading), along), leftOf(heading), left)
  const centre = plus(from, leftOf(heading), -radius)
  return plus(centre, leftOf(headingAt(piece, along)), radius + left)
}

/** To the left of travel. */
export function leftOf(heading: number): Point {
  return { x: Math.sin(heading), y: -Math.cos(heading) }
}

/** A part of a piece. */
export function partOf(piece: Piece, from: number, to: number): Piece {
  return { ...piece, from: pointAt(piece, from), heading: headingAt(piece, from), length: to - from }
}

/** Where the middle of several pieces in a row is, and which way it goes there. */
export function middleOf(pieces: readonly Piece[]): { at: Point; heading: number } {
  let left = pieces.reduce((sum, { length }) => sum + length, 0) / 2
  for (const piece of pieces) {
    if (left <= piece.length) return { at: pointAt(piece, left), heading: headingAt(piece, left) }
    left -= piece.length
  }
  const last = pieces.at(-1)!
  return { at: pointAt(last, last.length), heading: headingAt(last, last.length) }
}
