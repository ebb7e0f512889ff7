/** Generators of lines, for tests that want any of them. It has over 300 lines because every part of a line has its generator here. */
import {
  type BreakdownPart,
  type BreakdownSpec,
  type LineSpec,
  type MixSpec,
  type PathSpec,
  PLAIN_LINE,
  PLAIN_PATH,
  PLAIN_STATION,
  PLAIN_ZONE,
  type Position,
  type StationSpec,
  STORE,
  type SupplySpec,
  type TaskSpec,
  wholeLine,
  type ZoneSpec,
} from '@loopwright/line'
import { checkDistribution, type Distribution, distributionMean } from '@loopwright/stats'
import fc from 'fast-check'

/** Doubles with all their digits, and short ones as people type them. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(
    fc.double({ min, max, noNaN: true }).filter((x) => !Object.is(x, -0)),
    fc.integer({ min: Math.ceil(min), max: Math.floor(max) }),
    fc
      .double({ min, max, noNaN: true })
      .map((x) => Number(x.toPrecision(3)))
      .filter((x) => x >= min && x <= max && !Object.is(x, -0)),
  )
export const time = between(0.001, 5000)
const share = between(0, 1)
export const anyName = fc
  .oneof(
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
    fc.constantFrom(
      '<<',
      'line',
      'none',
      'every station',
      'true',
      '12',
      '007',
      '1e3',
      '~',
      'a: b',
      '# c',
      '- d',
      'constructor',
      '{',
      "'",
      'Z 01',
      'kind',
      '*x',
      '&y',
      '!z',
      '@',
      '%',
    ),
  )
  .filter(
    (text) =>
      text === text.trim() && text !== '' && text !== '__proto__' && !/[/\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u.test(text) && text.length <= 80,
  )
const names = (min: number, max: number): fc.Arbitrary<string[]> => fc.uniqueArray(anyName, { minLength: min, maxLength: max })

const plain: fc.Arbitrary<Distribution> = fc.oneof(
  fc.record({ kind: fc.constant('constant' as const), value: between(0, 5000) }),
  fc.tuple(time, time).map(([a, b]) => ({ kind: 'uniform' as const, min: Math.min(a, b), max: Math.max(a, b) })),
  fc.tuple(time, time, time, fc.constantFrom('triangular' as const, 'pert' as const)).map(([a, b, c, kind]) => {
    const [min = 0, mode = 0, max = 0] = [a, b, c].sort((x, y) => x - y)
    return { kind, min, mode, max }
  }),
  fc.record({ kind: fc.constant('exponential' as const), mean: time }),
  fc.record({ kind: fc.constantFrom('lognormal' as const, 'gamma' as const), mean: time, cv: between(0.01, 3) }),
  fc.record({ kind: fc.constant('weibull' as const), shape: between(0.3, 8), scale: time }),
  fc.record({
    kind: fc.constant('empirical' as const),
    values: fc.array(between(0, 5000), { minLength: 1, maxLength: 5 }),
    interpolate: fc.boolean(),
  }),
  fc.record({ kind: fc.constant('replay' as const), values: fc.array(between(0, 5000), { minLength: 1, maxLength: 5 }) }),
  fc
    .array(fc.tuple(between(0, 5000), between(0.001, 9)), { minLength: 1, maxLength: 4 })
    .map((pairs) => ({ kind: 'discrete' as const, values: pairs.map(([value]) => value), weights: pairs.map(([, weight]) => weight) })),
)
const usable = (d: Distribution): boolean => checkDistribution(d).length === 0
const anyDistribution: fc.Arbitrary<Distribution> = fc
  .oneof(
    { weight: 6, arbitrary: plain },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant('occasional' as const), base: between(0, 99), probability: share, of: plain }) },
    {
      weight: 1,
      arbitrary: fc.record({
        kind: fc.constant('limited' as const),
        of: plain,
        shift: between(0, 60),
        min: fc.option(between(0, 50)),
        max: fc.option(between(500, 9000)),
      }),
    },
  )
  .filter(usable)

const transfer = fc.record({ liftSeconds: between(0, 5), lowerSeconds: between(0, 5), enterOnlyIfExitClear: fc.boolean() })
const position = fc.constantFrom<Position>('low', 'high')

const zonesOf = (zoneNames: string[]): fc.Arbitrary<ZoneSpec[]> =>
  fc.tuple(
    ...zoneNames.map((zone, i) =>
      fc
        .record({
          name: fc.constant(zone),
          lengthMetres: fc.option(between(2, 9), { nil: null, freq: 6 }),
          sensorBeforeStopMetres: between(0, 0.5),
          release: fc.constantFrom('single' as const, 'train' as const),
          transfer: i === 0 ? fc.constant(null) : fc.option(transfer, { freq: 2 }),
        })
        .map((spec): ZoneSpec => ({ ...PLAIN_ZONE, ...spec, release: spec.transfer === null ? spec.release : 'single' })),
    ),
  )

/** Own numbers wherever the file would otherwise lack them. */
const pathOf = (zones: readonly ZoneSpec[], from: number): fc.Arbitrary<PathSpec> => {
  const to = (from + 1) % zones.length
  const needsMove = zones[to]!.lengthMetres === null
  return fc
    .record({
      own: fc.option(between(0.5, 9)),
      speed: fc.option(between(0.05, 2), { freq: 5 }),
      acceleration: fc.option(between(0.05, 2)),
      across: fc.boolean(),
      fromPosition: zones[from]!.transfer === null ? fc.constant('low' as const) : position,
      toPosition: zones[to]!.transfer === null ? fc.constant('low' as const) : position,
      move: fc.option(anyDistribution),
      spareMove: anyDistribution,
      clear: fc.oneof(fc.constant(null), fc.constant('move' as const), anyDistribution),
      spareClear: anyDistribution,
    })
    .map((draw): PathSpec => {
      const derivedClear = zones[from]!.release === 'single' || zones[from]!.transfer !== null
      const move = draw.move ?? ((needsMove && draw.own === null) || draw.speed === null ? draw.spareMove : null)
      const withMove = draw.clear === 'move' && move === null ? draw.spareClear : draw.clear
      const clear = withMove === null && draw.speed === null && derivedClear ? 'move' : withMove
      return {
        ...PLAIN_PATH,
        from,
        to,
        distanceMetres: draw.own ?? zones[to]!.lengthMetres,
        speedMetresPerSecond: draw.speed,
        accelerationMetresPerSecondSquared: draw.acceleration,
        across: draw.across,
        fromPosition: draw.fromPosition,
        toPosition: draw.toPosition,
        moveSeconds: move,
        clearSeconds: clear,
      }
    })
}

const mixOf = (variants: number): fc.Arbitrary<MixSpec> => {
  const some = <T extends number>(weights: T[]): boolean => weights.some((weight) => weight > 0)
  const sequence = fc.array(fc.nat({ max: variants - 1 }), { minLength: 1, maxLength: 9 })
  return fc.oneof(
    fc.record({ kind: fc.constant('random' as const), shares: fc.array(share, { minLength: variants, maxLength: variants }).filter(some) }),
    fc.record({
      kind: fc.constant('levelled' as const),
      shares: fc.array(fc.nat({ max: 1000 }), { minLength: variants, maxLength: variants }).filter(some),
    }),
    fc.record({ kind: fc.constant('pattern' as const), sequence }),
    fc.record({ kind: fc.constant('list' as const), sequence }),
  )
}

/** A duty with the given tasks. */
const dutyOf = (tasks: readonly number[], variants: number): fc.Arbitrary<TaskSpec[]> =>
  fc.tuple(
    ...tasks.map((task) =>
      fc.record({
        task: fc.constant(task),
        seconds: fc
          .array(fc.option(anyDistribution, { freq: 3 }), { minLength: variants, maxLength: variants })
          .filter((times) => times.some((one) => one !== null)),
      }),
    ),
  )

const stationOf = (station: string, zone: number, tasks: number, variants: number): fc.Arbitrary<StationSpec> =>
  fc.shuffledSubarray([...Array(tasks).keys()]).chain((order) =>
    fc
      .record({
        title: anyName,
        cuts: fc.tuple(fc.nat({ max: order.length }), fc.nat({ max: order.length })),
        has: fc.tuple(fc.boolean(), fc.boolean(), fc.boolean()),
        release: anyDistribution,
        automatic: fc.boolean(),
        worksInBreaks: fc.boolean(),
      })
      .chain((draw) => {
        const [first, second] = [Math.min(...draw.cuts), Math.max(...draw.cuts)]
        const [unloads, loads, works] = draw.has
        const rest = order.slice(second)
        const noDuty = !unloads && !loads && !(works && rest.length > 0)
        return fc
          .record({
            unload: unloads || noDuty ? dutyOf(order.slice(0, first), variants) : fc.constant(null),
            load: loads ? dutyOf(order.slice(first, second), variants) : fc.constant(null),
            work: works && rest.length > 0 ? dutyOf(rest, variants) : fc.constant(null),
          })
          .map(
            (duties): StationSpec => ({
              name: station,
              title: draw.title,
              zone,
              ...duties,
              releaseSeconds: draw.release,
              ...PLAIN_STATION,
              operatorsNeeded: draw.automatic ? 0 : 1,
              worksInBreaks: draw.automatic && draw.worksInBreaks,
            }),
          )
      }),
  )

const breakdownOf = (stop: string, parts: readonly BreakdownPart[]): fc.Arbitrary<BreakdownSpec> =>
  fc.record({
    name: fc.constant(stop),
    part: fc.constantFrom(...parts),
    clock: fc.constantFrom('operating' as const, 'calendar' as const),
    timeToFailureSeconds: anyDistribution.filter((d) => distributionMean(d) > 0.01),
    repairSeconds: anyDistribution,
  })

/** A closed loop with odd names, full digits, all kinds of everything. */
const anyLoop: fc.Arbitrary<LineSpec> = fc
  .record({ zones: names(3, 7), stations: names(0, 3), tasks: names(1, 5), variants: names(1, 4), stops: names(0, 3) })
  .chain((draw) =>
    zonesOf(draw.zones).chain((zones) =>
      fc.record({
        draw: fc.constant(draw),
        zones: fc.constant(zones),
        places: fc.shuffledSubarray([...zones.keys()], { minLength: draw.stations.length }),
      }),
    ),
  )
  .chain(({ draw, zones, places }) => {
    const parts: BreakdownPart[] = [
      { kind: 'section', index: 0 },
      ...zones.map((_, index) => ({ kind: 'zone' as const, index })),
      ...draw.stations.map((_, index) => ({ kind: 'station' as const, index })),
    ]
    zones.forEach((zone, index) => {
      if (zone.transfer !== null) parts.push({ kind: 'transfer', index })
    })
    const storage = zones.filter((zone) => zone.transfer?.enterOnlyIfExitClear !== true).length
    const count = Math.min(storage, zones.length - 1)
    return fc.record({
      sections: fc.constant(wholeLine(zones.length)),
      inspections: fc.constant(PLAIN_LINE.inspections),
      rework: fc.constant(PLAIN_LINE.rework),
      operators: fc.constant(PLAIN_LINE.operators),
      walks: fc.constant(PLAIN_LINE.walks),
      supply: fc.constant(PLAIN_LINE.supply),
      repairCrews: fc.constant(PLAIN_LINE.repairCrews),
      zones: fc.constant(zones),
      paths: fc.tuple(...zones.map((_, from) => pathOf(zones, from))),
      carriers: fc.nat({ max: count - 1 }).chain((fewer) =>
        fc.record({
          count: fc.constant(count - fewer),
          lengthMetres: between(0.6, 2),
          widthMetres: between(0.6, 2),
          start: fc.oneof(
            fc.constantFrom('spread' as const, 'packed' as const),
            fc.shuffledSubarray([...zones.keys()], { minLength: count - fewer, maxLength: count - fewer }),
          ),
        }),
      ),
      reactionSeconds: between(0, 1),
      staggerSeconds: between(0, 1),
      stations: fc.tuple(...draw.stations.map((station, i) => stationOf(station, places[i]!, draw.tasks.length, draw.variants.length))),
      tasks: fc.constant(draw.tasks),
      variants: fc.constant(draw.variants),
      mix: mixOf(draw.variants.length),
      breakdowns: fc.tuple(...draw.stops.map((stop) => breakdownOf(stop, parts))),
      breaks: fc
        .array(fc.record({ startSeconds: between(0, 90_000), lengthSeconds: time }), { maxLength: 3 })
        .map((breaks) => breaks.sort((a, b) => a.startSeconds - b.startSeconds)),
      conveyorDuringBreaks: fc.boolean(),
      window: fc
        .tuple(between(0, 50_000), between(0.5, 50_000))
        .map(([warmupSeconds, more]) => ({ warmupSeconds, endSeconds: warmupSeconds + more })),
    })
  })
  .filter((line) => line.paths.some((path) => path.moveSeconds === null || distributionMean(path.moveSeconds) > 0.001))

const anySupply = (usual: string): fc.Arbitrary<SupplySpec> =>
  fc.record({
    name: fc.oneof(fc.constant(usual), anyName),
    arrivals: fc.oneof(
      fc.record({ kind: fc.constant('every' as const), seconds: anyDistribution.filter((d) => distributionMean(d) > 0.01) }),
      fc.array(between(0, 9000), { maxLength: 4 }).map((instants) => ({ kind: 'list' as const, instants: instants.sort((a, b) => a - b) })),
    ),
    queueLimit: fc.option(fc.nat({ max: 9 })),
  })

/** A part of a list, in its order; at least one where it has one. */
const someOf = <T>(all: readonly T[], minLength = 0): fc.Arbitrary<T[]> =>
  fc.subarray([...all], { minLength: Math.min(minLength, all.length) })

/** Paths of no loop: each a copy of one of the line's with other ends. */
const graphOf = (line: LineSpec): fc.Arbitrary<PathSpec[]> => {
  const places = [STORE, ...line.zones.keys()]
  const ends = fc.tuple(fc.constantFrom(...places), fc.constantFrom(...places)).filter(([from, to]) => from !== to)
  const variants = [...line.variants.keys()]
  return fc.uniqueArray(ends, { minLength: 1, maxLength: 8, selector: ([from, to]) => `${from} ${to}` }).chain((chosen) =>
    fc.tuple(
      ...chosen.map(([from, to], k) =>
        fc
          .record({
            takes: fc.record({
              variants: fc.option(someOf(variants)),
              load: fc.option(fc.constantFrom('empty' as const, 'loaded' as const)),
              rejected: fc.option(fc.boolean()),
              forStation: line.stations.length === 0 ? fc.constant(null) : fc.option(fc.nat({ max: line.stations.length - 1 })),
            }),
            isPlain: fc.boolean(),
            manual:
              line.stations.length === 0
                ? fc.constant(null)
                : fc.option(
                    fc.record({
                      kind: fc.constantFrom('push' as const, 'pull' as const),
                      station: fc.nat({ max: line.stations.length - 1 }),
                    }),
                  ),
            move: anyDistribution.filter((d) => distributionMean(d) > 0.001),
          })
          .map((draw): PathSpec => {
            const like = line.paths[k % line.paths.length]!
            const high = (end: number): boolean => end !== STORE && line.zones[end]!.transfer !== null
            const own = to === STORE || line.zones[to]!.lengthMetres === null
            return {
              ...like,
              from,
              to,
              distanceMetres: own ? (like.distanceMetres ?? 2) : line.zones[to]!.lengthMetres,
              fromPosition: high(from) ? like.fromPosition : 'low',
              toPosition: high(to) ? like.toPosition : 'low',
              moveSeconds: draw.move,
              clearSeconds: like.clearSeconds ?? 'move',
              takes: draw.isPlain ? PLAIN_PATH.takes : draw.takes,
              manual: draw.manual,
            }
          }),
      ),
    ),
  )
}

/** What only some lines have, laid over a loop. */
const generalOf = (line: LineSpec): fc.Arbitrary<LineSpec> => {
  const stations = [...line.stations.keys()]
  const workTasks = [...line.tasks.keys()].filter(
    (task) => !line.stations.some(({ unload, load }) => [...(unload ?? []), ...(load ?? [])].some((one) => one.task === task)),
  )
  const inspecting = [...line.tasks.keys()].filter(
    (task) =>
      line.stations.some(({ load, work }) => [...(load ?? []), ...(work ?? [])].some((one) => one.task === task)) &&
      !line.stations.some(({ unload }) => unload?.some((one) => one.task === task)),
  )
  const reworked = workTasks.filter((task) => line.stations.some(({ work }) => work?.some((one) => one.task === task)))
  const sections = fc
    .tuple(names(1, 3), fc.array(fc.nat({ max: 3 }), { minLength: line.zones.length, maxLength: line.zones.length }))
    .map(([called, owner]): LineSpec['sections'] =>
      called.map((name, k) => ({ name, zones: [...line.zones.keys()].filter((zone) => owner[zone] === k) })),
    )
  return fc
    .record({
      paths: fc.oneof(fc.constant(line.paths as PathSpec[]), graphOf(line)),
      sections: fc.oneof(fc.constant<LineSpec['sections']>(line.sections), sections),
      divert: fc.constantFrom('first' as const, 'alternate' as const, 'free' as const),
      merge: fc.oneof(
        fc.constant({ kind: 'alternate' as const }),
        fc.record({ kind: fc.constant('priority' as const), from: fc.shuffledSubarray([STORE, ...line.zones.keys()]) }),
      ),
      operators:
        stations.length === 0
          ? fc.constant([])
          : names(0, 3).chain((called) =>
              fc.tuple(
                ...called.map((name) =>
                  fc.record({
                    name: fc.constant(name),
                    stations: fc.shuffledSubarray(stations, { minLength: 1 }),
                    start: fc.constantFrom(...stations),
                  }),
                ),
              ),
            ),
      walk: between(0, 60),
      supply: fc.oneof(fc.constant(line.supply), anySupply('supply')),
      extras: fc.tuple(
        ...line.stations.map(({ name }) =>
          fc.record({
            needed: fc.constantFrom(1, 2, 3),
            accepts: fc.constantFrom('good' as const, 'rejected' as const, 'all' as const),
            supply: fc.option(
              fc.oneof(
                anySupply(`supply/${name}`),
                fc.constant({ name: `supply/${name}`, arrivals: { kind: 'always' as const }, queueLimit: null }),
              ),
            ),
            receiver: fc.option(fc.record({ cycleSeconds: anyDistribution, queue: fc.nat({ max: 4 }) })),
            safetyStop: fc.option(fc.record({ probability: share, resetSeconds: anyDistribution })),
          }),
        ),
      ),
      inspections: someOf(inspecting).chain((tasks) =>
        fc.tuple(...tasks.map((task) => fc.record({ task: fc.constant(task), rejectProbability: share }))),
      ),
      rework: someOf(reworked, 1).chain((tasks) =>
        fc.tuple(...tasks.map((task) => fc.record({ task: fc.constant(task), only: fc.boolean() }))),
      ),
      repairCrews: fc.option(fc.integer({ min: 1, max: 3 })),
      inStore: fc.boolean(),
    })
    .map((draw): LineSpec => {
      const inSection = new Set(draw.sections.flatMap((section) => section.zones))
      const wasWhole = draw.sections === line.sections
      return {
        ...line,
        ...{ paths: draw.paths, sections: draw.sections, operators: draw.operators, supply: draw.supply },
        ...{ inspections: draw.inspections, rework: draw.rework, repairCrews: draw.repairCrews },
        zones: line.zones.map((zone, z) => (z === 0 ? { ...zone, divert: draw.divert, merge: draw.merge } : zone)),
        walks: stations.length > 1 && draw.operators.length > 0 ? [{ between: [0, 1], seconds: draw.walk }] : [],
        carriers: draw.inStore && draw.paths.some(({ from }) => from === STORE) ? { ...line.carriers, start: 'store' } : line.carriers,
        breakdowns: line.breakdowns.map((source) =>
          source.part.kind === 'section' && !wasWhole ? { ...source, part: { kind: 'section', index: draw.sections.length - 1 } } : source,
        ),
        stations: line.stations.map((station, s) => {
          const { needed, accepts, supply, receiver, safetyStop } = draw.extras[s]!
          return {
            ...station,
            ...{ supply, receiver },
            operatorsNeeded: station.operatorsNeeded === 0 ? 0 : needed,
            accepts: station.unload === null ? 'good' : accepts,
            safetyStop: inSection.has(station.zone) ? safetyStop : null,
          }
        }),
      }
    })
}

/** Any line that a scenario file can say: loops and graphs, with and without what only some lines have. */
export const anyLine: fc.Arbitrary<LineSpec> = anyLoop.chain((line) => fc.oneof(fc.constant(line), generalOf(line), generalOf(line)))
