/** Where the cells of a loop lie on paper: along straights, corners and bends, or, where that does not close, on a ring. */
import type { Point } from '../draw/svg.ts'
import { direction, headingAt, isBend, leftOf, middleOf, type Piece, partOf, plus, pointAt } from './planPiece.ts'
import type { PlanZone } from './planZone.ts'

/** One zone on paper. Lengths in metres; x to the right, y down. */
export interface Cell {
  readonly index: number
  readonly centre: Point
  /** unit vector of travel where the carrier leaves the zone */
  readonly ahead: Point
  /** unit vector away from the inside of the loop */
  readonly outward: Point
  readonly halfLength: number
  /** half extent across the travel; corners are squares */
  readonly halfWidth: number
  /** where the carrier leaves the zone */
  readonly exit: Point
  /** the middle of the band, in the direction of travel; of a corner: along its outer side */
  readonly pieces: readonly Piece[]
  /** 1: the outside of the loop is to the left of the pieces; −1: to the right */
  readonly outside: 1 | -1
}

export interface Outline {
  readonly cells: readonly Cell[]
  /** null: to scale, with its corners; else why it is a ring */
  readonly ringBecause: string | null
}

const LEFT = ({ x, y }: Point): Point => ({ x: y, y: -x })
const RIGHT = ({ x, y }: Point): Point => ({ x: -y, y: x })
const QUARTER = Math.PI / 2
/** a ring of fewer zones is round, of more it has two straights */
const LEAST_STRAIGHT_ZONES = 8
/** zones of middling length on each end of a ring with straights */
const END_ZONES = 3
/** pieces shorter than this share of a zone are none */
const TINY = 1e-6

/**
 * The outline of a loop, from lengths and turns. A zone that turns and is no transfer is a bend as long as the zone.
 *
 * @param zones  in travel order, at least one; lengths in metres, each > 0
 * @throws RangeError   if there is no zone or a length is not above 0
 */
export function outline(zones: readonly PlanZone[]): Outline {
  if (zones.length === 0) throw new RangeError('a plan needs at least one zone')
  const wrong = zones.find(({ lengthMetres }) => !(lengthMetres > 0 && Number.isFinite(lengthMetres)))
  if (wrong !== undefined) throw new RangeError(`zone ${wrong.name} needs a length above 0 m, not ${wrong.lengthMetres}`)
  const quarters = zones.reduce((sum, { turn }) => sum + (turn === 'right' ? 1 : turn === 'left' ? -1 : 0), 0)
  if (zones.every(({ turn }) => turn === null)) return ring(zones, 'No corners are given')
  if (Math.abs(quarters) !== 4) return ring(zones, `The corners turn by ${Math.abs(quarters) * 90}° in all, not by 360°`)
  // by its bends, else as if all corners were square
  const [bent, square] = [true, false].map((bends) => laidOut(zones, quarters > 0, bends)) as [Outlined, Outlined]
  const { cells, gap } = closes(bent, zones) ? bent : square
  if (!closes({ cells, gap }, zones)) return ring(zones, `With these lengths and corners the ends lie ${gap.toFixed(1)} m apart`)
  if (overlaps(cells)) return ring(zones, 'With these lengths and corners zones would lie on each other')
  return { cells, ringBecause: null }
}

/** Zones laid one after another, and how far they are from closing. */
interface Outlined {
  readonly cells: readonly Cell[]
  /** metres between the end and the start */
  readonly gap: number
}

function closes({ gap }: Outlined, zones: readonly PlanZone[]): boolean {
  return gap <= (0.25 * zones.reduce((sum, { lengthMetres }) => sum + lengthMetres, 0)) / zones.length
}

/** Width of the band: that of the corners, but neither much wider nor much narrower than a zone is long. */
function bandHalfWidth(zones: readonly PlanZone[]): number {
  const median = medianLength(zones)
  const corners = zones.filter(({ turn }) => turn !== null).map(({ lengthMetres }) => lengthMetres)
  return Math.min(median, Math.max(0.5 * median, Math.min(median, ...corners))) / 2
}

function medianLength(zones: readonly PlanZone[]): number {
  const lengths = zones.map(({ lengthMetres }) => lengthMetres).sort((a, b) => a - b)
  return lengths[Math.floor(lengths.length / 2)]!
}

/** @param bends  corners that are no transfers are bends, else squares */
function laidOut(zones: readonly PlanZone[], clockwise: boolean, bends: boolean): Outlined {
  const out = clockwise ? LEFT : RIGHT
  const outside = clockwise ? 1 : -1
  const isRound = ({ turn, transfer }: PlanZone): boolean => bends && turn !== null && !transfer
  const tightest = Math.min(...zones.filter(isRound).map(({ lengthMetres }) => lengthMetres / QUARTER))
  const halfWidth = Math.min(bandHalfWidth(zones), 0.75 * tightest)
  let at: Point = { x: 0, y: 0 }
  let ahead: Point = { x: 1, y: 0 }
  const cells = zones.map((zone, index): Cell => {
    const { lengthMetres, turn } = zone
    const half = lengthMetres / 2
    const before = ahead
    const heading = Math.atan2(before.y, before.x)
    if (isRound(zone)) {
      ahead = turn === 'right' ? RIGHT(before) : LEFT(before)
      const bend: Piece = { from: at, heading, length: lengthMetres, radius: ((turn === 'right' ? 1 : -1) * lengthMetres) / QUARTER }
      at = pointAt(bend, lengthMetres)
      return { index, ...cellOf([bend], outside), halfWidth, ahead, exit: at }
    }
    const centre = plus(at, before, half)
    if (turn !== null) ahead = turn === 'right' ? RIGHT(before) : LEFT(before)
    const exit = plus(centre, ahead, half)
    at = exit
    const outward = turn !== null && (turn === 'right') !== clockwise ? before : out(before)
    const along = clockwise ? RIGHT(outward) : LEFT(outward)
    const pieces: Piece[] = [
      { from: plus(centre, along, -half), heading: Math.atan2(along.y, along.x), length: lengthMetres, radius: null },
    ]
    return { index, centre, ahead, outward, halfLength: half, halfWidth: turn === null ? halfWidth : half, exit, pieces, outside }
  })
  return { cells, gap: Math.hypot(at.x, at.y) }
}

function cellOf(pieces: readonly Piece[], outside: 1 | -1): Pick<Cell, 'centre' | 'outward' | 'halfLength' | 'pieces' | 'outside'> {
  const { at, heading } = middleOf(pieces)
  const left = leftOf(heading)
  const halfLength = pieces.reduce((sum, { length }) => sum + length, 0) / 2
  return { centre: at, outward: { x: outside * left.x, y: outside * left.y }, halfLength, pieces, outside }
}

/** It is a bend, in a part at least. */
export const isBent = ({ pieces }: Cell): boolean => pieces.some(isBend)

/** Left, right, top and bottom of a cell. */
export function boxOf({ pieces, halfWidth }: Cell): { left: number; right: number; top: number; bottom: number } {
  const seen = pieces.flatMap((piece) =>
    (isBend(piece) ? [0, 0.25, 0.5, 0.75, 1] : [0, 1]).flatMap((share) =>
      [-halfWidth, halfWidth].map((left) => pointAt(piece, share * piece.length, left)),
    ),
  )
  const [xs, ys] = [seen.map(({ x }) => x), seen.map(({ y }) => y)]
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) }
}

function overlaps(cells: readonly Cell[]): boolean {
  const boxes = cells.map(boxOf)
  return cells.some((a, i) =>
    cells.slice(i + 1).some((b) => {
      const [one, other] = [boxes[i]!, boxes[b.index]!]
      const slack = 0.05 * Math.min(...[one, other].flatMap((box) => [box.right - box.left, box.bottom - box.top]))
      const near = b.index - a.index === 1 || b.index - a.index === cells.length - 1
      // the box of a bend is larger than the bend
      if (near || isBent(a) || isBent(b)) return false
      return (
        one.left < other.right - slack && other.left < one.right - slack && one.top < other.bottom - slack && other.top < one.bottom - slack
      )
    }),
  )
}

/** Clockwise, the lengths along the middle of the band: two straights with round ends, or where there are few zones a circle from the top. */
function ring(zones: readonly PlanZone[], ringBecause: string): Outline {
  const total = zones.reduce((sum, { lengthMetres }) => sum + lengthMetres, 0)
  const straight = zones.length < LEAST_STRAIGHT_ZONES ? 0 : straightLength(zones, total)
  const radius = (total / 2 - straight) / Math.PI
  const halfWidth = Math.min(bandHalfWidth(zones), radius / (straight === 0 ? 3 : 1.4))
  const track: Piece[] = []
  let from: Point = straight === 0 ? { x: 0, y: -radius } : { x: 0, y: 0 }
  let heading = 0
  for (const bend of [null, radius, null, radius]) {
    const piece: Piece = { from, heading, length: bend === null ? straight : Math.PI * radius, radius: bend }
    if (piece.length > 0) track.push(piece)
    from = pointAt(piece, piece.length)
    heading = headingAt(piece, piece.length)
  }
  let gone = 0
  const cells = zones.map(({ lengthMetres }, index): Cell => {
    const pieces = stretchOf(track, gone, gone + lengthMetres, TINY * lengthMetres)
    gone += lengthMetres
    const last = pieces.at(-1)!
    const ahead = direction(headingAt(last, last.length))
    return { index, ...cellOf(pieces, 1), ahead, halfWidth, exit: pointAt(last, last.length) }
  })
  return { cells, ringBecause }
}

/** So that the first straight ends with a zone; 0: too short for a straight of its own. */
function straightLength(zones: readonly PlanZone[], total: number): number {
  const wish = total / 2 - END_ZONES * medianLength(zones)
  let end = 0
  let best = 0
  for (const { lengthMetres } of zones) {
    end += lengthMetres
    if (Math.abs(end - wish) < Math.abs(best - wish)) best = end
  }
  return best < medianLength(zones) || total / 2 - best < 2 * medianLength(zones) ? 0 : best
}

function stretchOf(track: readonly Piece[], from: number, to: number, least: number): Piece[] {
  let start = 0
  return track.flatMap((piece) => {
    const [a, b] = [Math.max(0, from - start), Math.min(piece.length, to - start)]
    start += piece.length
    return b - a > least ? [partOf(piece, a, b)] : []
  })
}

/** A quarter turn clockwise: the long side upright, for narrow drawings. */
export function turned(cells: readonly Cell[]): Cell[] {
  return cells.map((cell) => ({
    ...cell,
    centre: RIGHT(cell.centre),
    ahead: RIGHT(cell.ahead),
    outward: RIGHT(cell.outward),
    exit: RIGHT(cell.exit),
    pieces: cell.pieces.map((piece) => ({ ...piece, from: RIGHT(piece.from), heading: piece.heading + QUARTER })),
  }))
}
