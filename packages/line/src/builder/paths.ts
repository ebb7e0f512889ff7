/** Paths of a sketch: those of the loop or straight line, with own values where a path gives them, and further ones. */
import { sentences as say } from '../check/sentences.ts'
import { type PathSpec, type Position, STORE } from '../spec.ts'
import type { Report } from './report.ts'
import type { LineSketch, PathSketch, Shape } from './sketch.ts'
import { amount, type Names, refer, referAll, referPlace, STORE_WORD, time } from './values.ts'
import type { Zones } from './zones.ts'

/** One way, and where its own values stand. */
interface Step {
  readonly from: number
  readonly to: number
  readonly own: PathSketch | null
  readonly path: string
}

export interface Parts {
  readonly zones: Zones
  readonly stations: Names
  readonly variants: Names
}

export function pathsOf(report: Report, shape: Shape, sketch: LineSketch, parts: Parts): PathSpec[] {
  const before = report.problems.length
  const steps = stepsOf(report, shape, sketch, parts.zones)
  if (steps.length === 0 && report.problems.length === before) report.add('paths', say.pathsMissing())
  const ring = shape === 'loop' ? parts.zones.onLine : 0
  const paths = steps.map((step, k) => pathSpec(report, sketch, parts, step, k < ring))
  return turned(parts.zones, paths, steps, ring)
}

/** Conditions or an operator: more than a plain way on. */
const hasOwnWay = (own: PathSketch | null): boolean => own?.takes !== undefined || own?.push !== undefined || own?.pull !== undefined

function stepsOf(report: Report, shape: Shape, sketch: LineSketch, zones: Zones): Step[] {
  const steps = mainSteps(shape, zones.onLine)
  const main = steps.length
  const next = new Map(steps.map(({ from, to }) => [from, to]))
  /** plain ways by their ends */
  const plain = new Map(steps.map(({ from, to }, k) => [`${from} ${to}`, k]))
  for (const [k, written] of (sketch.paths ?? []).entries()) {
    const path = `paths[${k}]`
    for (const step of typeof written === 'string' ? chain(report, path, written, zones) : one(report, path, written, next, zones)) {
      const before = hasOwnWay(step.own) ? undefined : plain.get(`${step.from} ${step.to}`)
      if (before !== undefined && before < main && steps[before]!.own === null) steps[before] = step
      else {
        if (before !== undefined) report.add(path, say.pathTwice(nameOf(zones, step.from), nameOf(zones, step.to)))
        steps.push(step)
        if (!hasOwnWay(step.own)) plain.set(`${step.from} ${step.to}`, steps.length - 1)
      }
    }
  }
  return steps
}

/** Of a loop from each zone to the next one, all round; of a straight line from store to store. */
function mainSteps(shape: Shape, zones: number): Step[] {
  const step = (from: number, to: number, k: number): Step => ({ from, to, own: null, path: `paths[${k}]` })
  if (shape === 'loop') return Array.from({ length: zones }, (_, from) => step(from, (from + 1) % zones, from))
  if (shape === 'straight') return Array.from({ length: zones + 1 }, (_, k) => step(k - 1, k < zones ? k : STORE, k))
  return []
}

function one(report: Report, path: string, own: PathSketch, following: ReadonlyMap<number, number>, zones: Zones): Step[] {
  const from = referPlace(report, `${path}.from`, own.from, zones.names)
  if (from === null) return []
  const next = following.get(from)
  if (own.to === undefined && next === undefined) {
    report.add(path, say.missing('to', 'the name of the next zone'))
    return []
  }
  const to = own.to === undefined ? next! : referPlace(report, `${path}.to`, own.to, zones.names)
  if (to === null) return []
  if (from === to) report.add(`${path}.to`, say.pathToItself(nameOf(zones, from)))
  return [{ from, to, own, path }]
}

/** `Z01 > Z02 > store`: one path for each sign. */
function chain(report: Report, path: string, text: string, zones: Zones): Step[] {
  const names = text.split('>').map((name) => name.trim())
  if (names.length < 2 || names.includes('')) {
    report.add(path, say.badChain(text))
    return []
  }
  const ends = names.map((name) => referPlace(report, path, name, zones.names))
  return ends.slice(1).flatMap((to, k): Step[] => {
    const from = ends[k]!
    if (from === null || to === null) return []
    if (from === to) report.add(path, say.pathToItself(nameOf(zones, to)))
    return [{ from, to, own: null, path }]
  })
}

const nameOf = (zones: Zones, end: number): string => zones.all[end]?.name ?? STORE_WORD

function pathSpec(report: Report, sketch: LineSketch, parts: Parts, { from, to, own, path }: Step, inRing: boolean): PathSpec {
  const { zones } = parts
  const [zone, next] = [zones.all[from] ?? null, zones.all[to] ?? null]
  /** the first place that has a value; null where there is none */
  const positive = (...places: readonly (readonly [at: string, value: number | undefined])[]): number | null => {
    const [at, value] = places.find(([, each]) => each !== undefined) ?? []
    return value === undefined ? null : amount(report, at!, value, 'above zero')
  }
  const driven = (key: 'speed' | 'acceleration'): number | null =>
    positive([`${path}.${key}`, own?.[key]], [`zones.${next?.name}.${key}`, next?.[key]], [`drive.${key}`, sketch.drive?.[key]])
  const position = (key: 'fromPosition' | 'toPosition', end: typeof zone, usual: Position): Position => {
    if (own?.[key] === 'high' && end?.transfer === undefined)
      report.add(`${path}.${key}`, say.positionWithoutTransfer(end?.name ?? STORE_WORD))
    return own?.[key] ?? (end?.transfer === undefined ? 'low' : usual)
  }
  const speed = driven('speed')
  const hand = own?.push ?? own?.pull
  if (own?.push !== undefined && own.pull !== undefined)
    report.add(`${path}.pull`, say.onlyOneOf('pull', 'push', 'a path is pushed or pulled'))
  if (hand !== undefined && own?.move === undefined) report.add(path, say.manualNeedsMove(own?.push === undefined ? 'pull' : 'push'))
  if (own?.clear === 'move' && own.move === undefined) report.add(`${path}.clear`, say.clearMoveWithoutMove())
  const usualClear = own?.move !== undefined && (speed === null || hand !== undefined) ? 'move' : undefined
  const clear = own?.clear ?? usualClear
  const kind = own?.push === undefined ? 'pull' : 'push'
  const station = hand === undefined ? null : refer(report, `${path}.${kind}`, hand, parts.stations)
  return {
    from,
    to,
    distanceMetres: positive([`${path}.distance`, own?.distance]) ?? (next === null ? commonLength(zones) : next.length) ?? null,
    speedMetresPerSecond: speed,
    accelerationMetresPerSecondSquared: driven('acceleration'),
    across: own?.across ?? false,
    fromPosition: position('fromPosition', zone, inRing ? 'high' : 'low'),
    toPosition: position('toPosition', next, 'low'),
    moveSeconds: own?.move === undefined ? null : time(report, `${path}.move`, own.move),
    clearSeconds: clear === undefined ? null : clear === 'move' ? clear : time(report, `${path}.clear`, clear),
    takes: takesOf(report, path, own?.takes ?? {}, parts),
    manual: station === null ? null : { kind, station },
  }
}

const takesOf = (report: Report, path: string, takes: NonNullable<PathSketch['takes']>, parts: Parts): PathSpec['takes'] => ({
  variants: takes.variants === undefined ? null : referAll(report, `${path}.takes.variants`, takes.variants, parts.variants),
  load: takes.load ?? null,
  rejected: takes.rejected ?? null,
  forStation: takes.forStation === undefined ? null : refer(report, `${path}.takes.forStation`, takes.forStation, parts.stations),
})

/** The length of the zones where they are all of one length. */
function commonLength({ all }: Zones): number | undefined {
  return all.every(({ length }) => length === all[0]!.length) ? all[0]?.length : undefined
}

/**
 * On the loop the carrier starts lengthwise at zone 0; each transfer whose ways in and out need different positions turns it for its way out and all
 * paths up to the next such transfer. Other paths are travelled sideways where they need `high` at an end. (MODEL.md §3)
 */
function turned(zones: Zones, paths: readonly PathSpec[], steps: readonly Step[], ring: number): PathSpec[] {
  let across = false
  return paths.map((path, k) => {
    if (k < ring && zones.all[path.from]!.transfer !== undefined && paths[(k + ring - 1) % ring]!.toPosition !== path.fromPosition)
      across = !across
    const usual = k < ring ? across : path.fromPosition === 'high' || path.toPosition === 'high'
    return { ...path, across: steps[k]!.own?.across ?? usual }
  })
}
