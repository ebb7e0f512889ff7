/** Where the cells of a loop lie on paper: along straights and quarter turns, or, where that does not close, on a ring. */
import type { Point } from '../draw/svg.ts'
import type { PlanZone } from './planZone.ts'

/** One zone on paper. Lengths in metres; x to the right, y down. */
export interface Cell {
  readonly index: number
  readonly centre: Point
  /** unit vector of travel where the carrier leaves the zone */
  readonly ahead: Point
  /** unit vector away from the inside of the loop */
  readonly outward: Point
  /** half extents along and across the travel of a straight cell; corners are squares */
  readonly halfLength: number
  readonly halfWidth: number
  /** where the carrier leaves the zone */
  readonly exit: Point
  /** radians along the ring, from and to; null: not on a ring */
  readonly arc: readonly [number, number] | null
}

export interface Outline {
  readonly cells: readonly Cell[]
  /** null: to scale, with its corners; else why it is a ring */
  readonly ringBecause: string | null
  /** metres; 0: not a ring */
  readonly ringRadius: number
}

const LEFT = ({ x, y }: Point): Point => ({ x: y, y: -x })
const RIGHT = ({ x, y }: Point): Point => ({ x: -y, y: x })

/**
 * The outline of a loop, from lengths and turns.
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
  const { cells, gap } = walk(zones, quarters > 0)
  const mean = zones.reduce((sum, { lengthMetres }) => sum + lengthMetres, 0) / zones.length
  if (gap > 0.25 * mean) return ring(zones, `With these lengths and corners the ends lie ${gap.toFixed(1)} m apart`)
  if (overlaps(cells)) return ring(zones, 'With these lengths and corners zones would lie on each other')
  return { cells, ringBecause: null, ringRadius: 0 }
}

/** Width of the band: that of the corners, but neither much wider nor much narrower than a zone is long. */
function bandHalfWidth(zones: readonly PlanZone[]): number {
  const lengths = zones.map(({ lengthMetres }) => lengthMetres).sort((a, b) => a - b)
  const median = lengths[Math.floor(lengths.length / 2)]!
  const corners = zones.filter(({ turn }) => turn !== null).map(({ lengthMetres }) => lengthMetres)
  return Math.min(median, Math.max(0.5 * median, Math.min(median, ...corners))) / 2
}

function walk(zones: readonly PlanZone[], clockwise: boolean): { cells: Cell[]; gap: number } {
  const halfWidth = bandHalfWidth(zones)
  const out = clockwise ? LEFT : RIGHT
  let at: Point = { x: 0, y: 0 }
  let ahead: Point = { x: 1, y: 0 }
  const cells = zones.map(({ lengthMetres, turn }, index): Cell => {
    const half = lengthMetres / 2
    const before = ahead
    const centre = plus(at, ahead, half)
    if (turn !== null) ahead = turn === 'right' ? RIGHT(ahead) : LEFT(ahead)
    const exit = plus(centre, ahead, half)
    at = exit
    const inward = turn !== null && (turn === 'right') !== clockwise
    const side = inward ? before : out(before)
    return { index, centre, ahead, outward: side, halfLength: half, halfWidth: turn === null ? halfWidth : half, exit, arc: null }
  })
  return { cells, gap: Math.hypot(at.x, at.y) }
}

function overlaps(cells: readonly Cell[]): boolean {
  const box = ({ ahead, halfLength, halfWidth }: Cell) =>
    ahead.x !== 0 ? { w: halfLength, h: halfWidth } : { w: halfWidth, h: halfLength }
  return cells.some((a, i) =>
    cells.slice(i + 1).some((b) => {
      const [one, other] = [box(a), box(b)]
      const slack = 0.1 * Math.min(one.w, one.h, other.w, other.h)
      const near = b.index - a.index === 1 || b.index - a.index === cells.length - 1
      return (
        !near && Math.abs(a.centre.x - b.centre.x) < one.w + other.w - slack && Math.abs(a.centre.y - b.centre.y) < one.h + other.h - slack
      )
    }),
  )
}

/** Clockwise from the top, the lengths along the middle of the band. */
function ring(zones: readonly PlanZone[], ringBecause: string): Outline {
  const total = zones.reduce((sum, { lengthMetres }) => sum + lengthMetres, 0)
  const ringRadius = total / (2 * Math.PI)
  const halfWidth = Math.min(bandHalfWidth(zones), ringRadius / 3)
  let from = -Math.PI / 2
  const cells = zones.map(({ lengthMetres }, index): Cell => {
    const to = from + (lengthMetres / total) * 2 * Math.PI
    const arc = [from, to] as const
    const outward = direction((from + to) / 2)
    from = to
    const exit = plus({ x: 0, y: 0 }, direction(to), ringRadius)
    return {
      index,
      centre: plus({ x: 0, y: 0 }, outward, ringRadius),
      ahead: RIGHT(direction(to)),
      outward,
      halfLength: lengthMetres / 2,
      halfWidth,
      exit,
      arc,
    }
  })
  return { cells, ringBecause, ringRadius }
}

/** A quarter turn clockwise: the long side upright, for narrow drawings. */
export function turned(cells: readonly Cell[]): Cell[] {
  return cells.map((cell) => ({
    ...cell,
    centre: RIGHT(cell.centre),
    ahead: RIGHT(cell.ahead),
    outward: RIGHT(cell.outward),
    exit: RIGHT(cell.exit),
  }))
}

export function direction(angle: number): Point {
  return { x: Math.cos(angle), y: Math.sin(angle) }
}

/** a + b·times */
export function plus(a: Point, b: Point, times: number): Point {
  return { x: a.x + b.x * times, y: a.y + b.y * times }
}
