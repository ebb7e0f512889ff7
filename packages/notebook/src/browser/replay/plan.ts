/** The plan on which a replay moves: where zones lie and how the ways between them run, read off the drawing itself. */
import { drawPlan } from '../../page/planHtml.ts'
import type { WatchedLine } from '../../replay/watchedLine.ts'

export interface Spot {
  readonly x: number
  readonly y: number
}

export interface PlanSpot extends Spot {
  readonly halfWidth: number
  readonly halfHeight: number
  readonly cell: SVGGElement
}

export interface ReplayPlan {
  readonly svg: SVGSVGElement
  /** middle of each zone's cell, and half its width and height; units of the drawing */
  readonly zones: readonly PlanSpot[]
  /** half a sign of a station */
  readonly badge: number
  /** from the middle of a zone towards the inside of the drawing: where a sign of its station stands */
  readonly badges: ReadonlyMap<number, Spot>
  /** middle of a round sign by the name of a zone: outside the loop; on a map within the cell, at its end */
  readonly signSpot: (zone: number, radius: number) => Spot
  /** a place on the way of a path, 0 … 1 */
  readonly along: (path: number, way: number) => Spot
}

/** points that a bent way is read off at */
const SAMPLES = 24
/** half a sign of a station: where there is room, and on a narrow screen */
const BADGE = 9
const BADGE_NARROW = 7
const NARROW_PIXELS = 600
const LEAST_PIXELS = 320

/** @param id  begins the ids within the drawing */
export function layPlan(place: HTMLElement, { plan, paths, stations }: WatchedLine, id = 'replay-plan'): ReplayPlan {
  const widthPixels = Math.max(LEAST_PIXELS, Math.min(1100, Math.floor(place.clientWidth)))
  const badge = widthPixels < NARROW_PIXELS ? BADGE_NARROW : BADGE
  const apart = badge + (widthPixels < NARROW_PIXELS ? 1 : 3)
  place.innerHTML = drawPlan(plan, { id, widthPixels, valueMeaning: null }).svg
  const svg = place.querySelector('svg')!
  const zones = plan.zones.map((_, zone) => {
    const cell = svg.querySelector<SVGGElement>(`[data-zone="${zone}"]`)!
    const { x, y, width, height } = cell.querySelector<SVGGraphicsElement>('path, rect')!.getBBox()
    return { x: x + width / 2, y: y + height / 2, halfWidth: width / 2, halfHeight: height / 2, cell }
  })
  const [left, right, top, bottom] = [
    Math.min(...zones.map(({ x }) => x)),
    Math.max(...zones.map(({ x }) => x)),
    Math.min(...zones.map(({ y }) => y)),
    Math.max(...zones.map(({ y }) => y)),
  ]
  /** towards the inside of the loop: down from the upper row, up from the lower one, away from the sides; on a map to the right */
  const inward = ({ x, y }: Spot): Spot => {
    if (plan.paths !== null) return { x: 1, y: 0 }
    const [edgeY, edgeX] = [Math.min(y - top, bottom - y), Math.min(x - left, right - x)]
    return edgeY <= edgeX ? { x: 0, y: y - top < bottom - y ? 1 : -1 } : { x: x - left < right - x ? 1 : -1, y: 0 }
  }
  const beside = ({ x, y, halfWidth, halfHeight }: PlanSpot, way: Spot, pixels: number): Spot => ({
    x: x + way.x * (halfWidth + pixels),
    y: y + way.y * (halfHeight + pixels),
  })
  const badges = new Map(stations.map(({ zone }): [number, Spot] => [zone, beside(zones[zone]!, inward(zones[zone]!), apart)]))
  const routes = paths.map(({ from, to }, path) => {
    const drawn = plan.paths === null ? null : svg.querySelector<SVGPathElement>(`[data-way="${path}"] path`)
    const bent = drawn === null ? [] : sampled(drawn)
    const points = [...(from < 0 ? [] : [zones[from]!]), ...bent, ...(to < 0 ? [] : [zones[to]!])]
    return routeOf(points.length === 0 ? [{ x: left, y: top }] : points)
  })
  return {
    svg,
    zones,
    badge,
    badges,
    signSpot: (zone, radius) => {
      const spot = zones[zone]!
      const { x, y } = inward(spot)
      return plan.paths === null ? beside(spot, { x: -x, y: -y }, radius + 2) : beside(spot, { x, y }, -radius - 2)
    },
    along: (path, way) => routes[path]!(way),
  }
}

function sampled(path: SVGPathElement): Spot[] {
  const length = path.getTotalLength()
  return Array.from({ length: SAMPLES + 1 }, (_, k) => {
    const { x, y } = path.getPointAtLength((length * k) / SAMPLES)
    return { x, y }
  })
}

/** A place on a line of points, by its share of the length. */
function routeOf(points: readonly Spot[]): (way: number) => Spot {
  const ends = [0]
  for (let k = 1; k < points.length; k += 1)
    ends.push(ends[k - 1]! + Math.hypot(points[k]!.x - points[k - 1]!.x, points[k]!.y - points[k - 1]!.y))
  const whole = ends.at(-1)!
  return (way) => {
    const at = way * whole
    let k = 1
    while (k < ends.length - 1 && ends[k]! < at) k += 1
    const [a, b] = [points[k - 1]!, points[k] ?? points[k - 1]!]
    const length = (ends[k] ?? 0) - ends[k - 1]!
    const share = length > 0 ? (at - ends[k - 1]!) / length : 0
    return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }
  }
}
