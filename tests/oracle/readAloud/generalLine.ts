/** Lines of any kind made up at random: a loop of `randomLine.ts` with more or fewer paths, people, goods, rejects and stops laid over it. */
import {
  type BreakdownSpec,
  type LineSpec,
  type PathSpec,
  PLAIN_PATH,
  type SectionSpec,
  STORE,
  type StationSpec,
  type TakesSpec,
} from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import * as fc from 'fast-check'
import { type Choices, choicesFrom, someDistribution, someTime, type TimeStyle } from './choices.ts'
import { lineFrom } from './randomLine.ts'

const PARTS = ['graph', 'sections', 'crews', 'safety', 'operators', 'manual', 'supply', 'receivers', 'rejects', 'odd breaks'] as const
/** `failures at once`: not among those of every line */
export type Part = (typeof PARTS)[number] | 'failures at once'

/** A valid LineSpec; the same seed of fast-check gives the same lines. There is no shrinking: see smaller.ts. */
export function generalLine(): fc.Arbitrary<LineSpec> {
  return fc.noBias(fc.noShrink(fc.nat({ max: 2 ** 31 - 1 }))).map((seed) => generalFrom(seed))
}

/** Line number `seed`, with some of the parts named. */
export function generalFrom(seed: number, parts: readonly Part[] = PARTS): LineSpec {
  const choose = choicesFrom(seed + 2 ** 32)
  const whole = choose.chance(0.6)
  const style: TimeStyle = whole ? 'whole' : 'mixed'
  let line = choose.chance(0.8) ? withMuchGoingOn(choose, lineFrom(seed)) : lineFrom(seed)
  const share = choose.pick([0.3, 0.6, 0.9])
  const some = new Set(parts.filter(() => choose.chance(share)))
  if (some.has('graph')) line = withGraph(choose, style, line)
  if (some.has('sections')) line = withSections(choose, line)
  if (some.has('crews')) line = { ...line, repairCrews: choose.whole(1, 2) }
  if (some.has('safety')) line = withSafetyStops(choose, style, line)
  if (some.has('manual')) line = withManualPaths(choose, style, line)
  if (some.has('operators')) line = withOperators(choose, style, line)
  if (some.has('supply')) line = withSupplies(choose, style, line)
  if (some.has('receivers')) line = withReceivers(choose, style, line)
  if (some.has('rejects')) line = withRejects(choose, line)
  if (some.has('odd breaks')) line = withOddBreaks(choose, line)
  if (some.has('failures at once')) line = withFailuresAtOnce(choose, line)
  return line
}

/** Room to move, products that do not run out, a station that loads and unloads, and some time for it. */
function withMuchGoingOn(choose: Choices, line: LineSpec): LineSpec {
  const places = line.zones.flatMap(({ transfer }, zone) => (transfer?.enterOnlyIfExitClear === true ? [] : [zone]))
  const count = Math.max(1, Math.min(line.carriers.count, Math.floor(places.length / 2)))
  const { start } = line.carriers
  const [first, ...others] = line.stations
  const stations = first === undefined ? [] : [{ ...first, unload: first.unload ?? [], load: first.load ?? [] }, ...others]
  const { warmupSeconds, endSeconds } = line.window
  return {
    ...line,
    stations,
    mix: line.mix.kind === 'list' && choose.chance(0.7) ? { ...line.mix, kind: 'pattern' } : line.mix,
    carriers: { ...line.carriers, count, start: typeof start === 'string' ? start : start.slice(0, count) },
    window: { warmupSeconds, endSeconds: endSeconds + (endSeconds - warmupSeconds < 1000 ? 250 : 0) },
  }
}

function someTakes(choose: Choices, line: LineSpec, rejected: boolean): TakesSpec {
  const takes = PLAIN_PATH.takes
  const kind = choose.pick(['none', 'none', 'none', 'variants', 'load', 'forStation', 'rejected', 'two'] as const)
  const variants = line.variants.map((_, v) => v).filter(() => choose.chance(0.5))
  const forStation = line.stations.length > 0 ? choose.whole(0, line.stations.length - 1) : null
  switch (kind) {
    case 'none':
      return takes
    case 'variants':
      return { ...takes, variants }
    case 'load':
      return { ...takes, load: choose.pick(['empty', 'loaded']) }
    case 'forStation':
      return { ...takes, forStation }
    case 'rejected':
      return rejected ? { ...takes, rejected: choose.chance(0.7) } : { ...takes, load: 'loaded' }
    case 'two':
      return { ...takes, variants, load: choose.pick(['loaded', null]), forStation: choose.chance(0.3) ? forStation : null }
  }
}

/** More paths, some with conditions; now and then a store; diverts and merges. */
function withGraph(choose: Choices, style: TimeStyle, line: LineSpec): LineSpec {
  const count = line.zones.length
  const isOpen = choose.chance(0.4)
  const transferWays = choose.chance(0.7)
  const position = (zone: number, usual: 'low' | 'high') =>
    zone === STORE || line.zones[zone]!.transfer === null
      ? 'low'
      : transferWays && choose.chance(0.4)
        ? choose.pick(['low', 'high'] as const)
        : usual
  const usualIn = (zone: number) => line.paths.find(({ to }) => to === zone)!.toPosition
  const usualOut = (zone: number) => line.paths.find(({ from }) => from === zone)!.fromPosition
  const pathOf = (from: number, to: number): PathSpec => {
    const like = line.paths[from === STORE ? 0 : from]!
    // a cycle has a path back, or out of the store, and that takes time
    const isBack = from === STORE || to <= from
    const given = to === STORE || line.zones[to]!.lengthMetres === null || choose.chance(0.4)
    return {
      ...like,
      from,
      to,
      distanceMetres: given ? 1 : line.zones[to]!.lengthMetres,
      fromPosition: from === STORE ? 'low' : position(from, usualOut(from)),
      toPosition: to === STORE ? 'low' : position(to, usualIn(to)),
      moveSeconds: given ? someDistribution(choose, style, 2, !isBack) : null,
      clearSeconds: choose.chance(0.3) ? someDistribution(choose, style, 2, true) : given ? 'move' : null,
      takes: choose.chance(0.5) ? someTakes(choose, line, true) : PLAIN_PATH.takes,
    }
  }
  const drop = choose.chance(0.3) ? 0.15 : 0
  const around = line.paths
    .filter((path) => path.to <= path.from || !choose.chance(drop))
    .map((path): PathSpec => {
      const takes = choose.chance(0.08) ? someTakes(choose, line, true) : path.takes
      return path.to > path.from || path.moveSeconds === null
        ? { ...path, takes }
        : { ...path, takes, moveSeconds: someDistribution(choose, style, 2, false) }
    })
  const more: PathSpec[] = []
  for (let k = choose.whole(1, count); k > 0; k--) {
    const [from, to] = [choose.whole(0, count - 1), choose.whole(0, count - 1)]
    if (from !== to) more.push(pathOf(from, to))
  }
  if (isOpen) {
    for (let k = choose.whole(1, 2); k > 0; k--) more.push(pathOf(STORE, choose.whole(0, count - 1)))
    for (let k = choose.whole(1, 3); k > 0; k--) more.push(pathOf(choose.whole(0, count - 1), STORE))
  }
  const paths = choose.chance(0.5) ? [...around, ...more] : choose.shuffled([...around, ...more])
  // Nobody can ever claim a ring of exit-clear transfers.
  const isExitClear = (zone: number) => zone !== STORE && line.zones[zone]!.transfer?.enterOnlyIfExitClear === true
  const reaches = (from: number, goal: number, met: Set<number>): boolean =>
    paths.some(({ from: start, to }) => {
      if (start !== from || !isExitClear(to) || met.has(to)) return false
      return to === goal || reaches(to, goal, met.add(to))
    })
  const isInRing = (zone: number) => isExitClear(zone) && reaches(zone, zone, new Set())
  const zones = line.zones.map((zone, index) => ({
    ...zone,
    transfer: zone.transfer !== null && isInRing(index) ? { ...zone.transfer, enterOnlyIfExitClear: false } : zone.transfer,
    divert: choose.pick(['first', 'first', 'alternate', 'free', 'free'] as const),
    merge: choose.chance(0.4)
      ? ({ kind: 'waiting' } as const)
      : choose.chance(0.5)
        ? ({ kind: 'alternate' } as const)
        : ({ kind: 'priority', from: choose.shuffled([STORE, ...line.zones.keys()]).slice(0, choose.whole(0, count)) } as const),
  }))
  const { carriers } = line
  const inStore = isOpen ? choose.whole(0, 4) : 0
  const rule = choose.chance(0.4) && isOpen
  const standing = typeof carriers.start === 'string' ? null : carriers.start
  const start = rule ? 'store' : standing !== null ? [...standing, ...Array.from({ length: inStore }, () => STORE)] : carriers.start
  return { ...line, zones, paths, carriers: { ...carriers, start, count: typeof start === 'string' ? carriers.count : start.length } }
}

/** Zones in up to three sections, or in none; breakdowns of sections spread over them. */
function withSections(choose: Choices, line: LineSpec): LineSpec {
  const count = choose.whole(1, 3)
  const none = choose.chance(0.5) ? 0 : 0.3
  const owner = line.zones.map(() => (choose.chance(none) ? -1 : choose.whole(0, count - 1)))
  const sections = Array.from(
    { length: count },
    (_, k): SectionSpec => ({ name: `section ${k}`, zones: owner.flatMap((one, zone) => (one === k ? [zone] : [])) }),
  )
  const breakdowns = line.breakdowns.map((source) =>
    source.part.kind === 'section' ? { ...source, part: { kind: 'section' as const, index: choose.whole(0, count - 1) } } : source,
  )
  return { ...line, sections, breakdowns }
}

function withSafetyStops(choose: Choices, style: TimeStyle, line: LineSpec): LineSpec {
  const inSection = new Set(line.sections.flatMap(({ zones }) => zones))
  const stations = line.stations.map((station): StationSpec => {
    if (!inSection.has(station.zone) || choose.chance(0.4)) return station
    const probability = choose.pick([0, 0.05, 0.3, 1])
    return { ...station, safetyStop: { probability, resetSeconds: someDistribution(choose, style, 4, true) } }
  })
  return { ...line, stations }
}

function withManualPaths(choose: Choices, style: TimeStyle, line: LineSpec): LineSpec {
  if (line.stations.length === 0) return line
  const paths = line.paths.map((path): PathSpec => {
    if (!choose.chance(0.25)) return path
    const station = choose.whole(0, line.stations.length - 1)
    const moveSeconds = someDistribution(choose, style, 3, path.to > path.from && path.from !== STORE)
    const clearSeconds = choose.chance(0.3) ? someDistribution(choose, style, 3, true) : 'move'
    return { ...path, manual: { kind: choose.pick(['push', 'pull']), station }, moveSeconds, clearSeconds }
  })
  return { ...line, paths }
}

function withOperators(choose: Choices, style: TimeStyle, line: LineSpec): LineSpec {
  const count = line.stations.length
  if (count === 0) return line
  const all = [...line.stations.keys()]
  const operators = Array.from({ length: choose.whole(1, 4) }, (_, o) => {
    const stations = choose.shuffled(all).slice(0, choose.whole(1, count))
    return { name: `operator ${o}`, stations, start: choose.chance(0.8) ? stations[0]! : choose.pick(all) }
  })
  const walks = all.flatMap((a) => all.slice(a + 1).map((b): [number, number] => [a, b])).filter(() => choose.chance(0.7))
  return {
    ...line,
    operators,
    walks: walks.map((between) => ({ between, seconds: someTime(choose, style, 4, true) })),
    stations: line.stations.map((station) =>
      station.operatorsNeeded > 0 && choose.chance(0.3) ? { ...station, operatorsNeeded: 2 } : station,
    ),
  }
}

function withSupplies(choose: Choices, style: TimeStyle, line: LineSpec): LineSpec {
  const supply = (name: string): LineSpec['supply'] => {
    const kind = choose.pick(['always', 'every', 'every', 'list'] as const)
    const queueLimit = choose.chance(0.5) ? null : choose.whole(0, 4)
    if (kind === 'always') return { name, arrivals: { kind }, queueLimit: null }
    if (kind === 'every')
      return { name, arrivals: { kind, seconds: someDistribution(choose, style, choose.pick([5, 12]), false) }, queueLimit }
    let clock = 0
    const instants = Array.from({ length: choose.whole(0, 12) }, () => (clock += someTime(choose, style, 10, true)))
    return { name, arrivals: { kind, instants }, queueLimit }
  }
  return {
    ...line,
    supply: choose.chance(0.8) ? supply('supply') : line.supply,
    stations: line.stations.map((station) => (choose.chance(0.3) ? { ...station, supply: supply(`supply/${station.name}`) } : station)),
  }
}

function withReceivers(choose: Choices, style: TimeStyle, line: LineSpec): LineSpec {
  const stations = line.stations.map((station): StationSpec => {
    if (choose.chance(0.3)) return station
    const cycleSeconds: Distribution = someDistribution(choose, style, choose.pick([6, 25]), true)
    return { ...station, receiver: { cycleSeconds, queue: choose.whole(0, 2) } }
  })
  return { ...line, stations }
}

/** Inspections on load and work tasks, rework on tasks that are only work. */
function withRejects(choose: Choices, line: LineSpec): LineSpec {
  const isIn = (duty: 'unload' | 'load' | 'work', task: number) =>
    line.stations.some((station) => station[duty]?.some((one) => one.task === task))
  const tasks = [...line.tasks.keys()].filter((task) => !isIn('unload', task))
  const inspections = tasks
    .filter(() => choose.chance(0.6))
    .map((task) => ({ task, rejectProbability: choose.pick([0, 0.2, 0.2, 0.6, 1]) }))
  const rework = tasks.filter((task) => !isIn('load', task) && choose.chance(0.5)).map((task) => ({ task, only: choose.chance(0.4) }))
  const stations = line.stations.map(
    (station): StationSpec =>
      station.unload === null ? station : { ...station, accepts: choose.pick(['good', 'good', 'all', 'all', 'rejected']) },
  )
  const paths = line.paths.map(
    (path): PathSpec => (choose.chance(0.15) ? { ...path, takes: { ...path.takes, rejected: choose.chance(0.7) } } : path),
  )
  return { ...line, inspections, rework, stations, paths }
}

/** Times to failure of 0 s. */
function withFailuresAtOnce(choose: Choices, line: LineSpec): LineSpec {
  const breakdowns = line.breakdowns.map((source): BreakdownSpec => {
    if (choose.chance(0.5)) return source
    const values = choose.shuffled([0, 0, choose.whole(1, 30), choose.whole(1, 60)])
    return { ...source, timeToFailureSeconds: { kind: 'replay', values }, repairSeconds: { kind: 'constant', value: choose.whole(1, 8) } }
  })
  return { ...line, breakdowns }
}

/** Breaks that overlap, or last 0 s. */
function withOddBreaks(choose: Choices, line: LineSpec): LineSpec {
  const more = line.breaks.map(({ startSeconds }) => ({
    startSeconds: startSeconds + choose.whole(0, 8),
    lengthSeconds: choose.whole(0, 20),
  }))
  return { ...line, breaks: [...line.breaks, ...more].sort((a, b) => a.startSeconds - b.startSeconds) }
}
