/** From a sketch to the complete LineSpec, with every finding on the way. */
import { checkLayout, checkLine } from '../check/checkLine.ts'
import { sentences as say } from '../check/sentences.ts'
import { type CarriersSpec, type LineSpec, STORE } from '../spec.ts'
import { checkForm } from './form.ts'
import { operatorsOf, rejectsOf, walksOf } from './people.ts'
import { pathsOf } from './paths.ts'
import { productsOf } from './products.ts'
import { createReport, LineError, type LineProblem, type Report } from './report.ts'
import type { LineSketch, Shape } from './sketch.ts'
import { stationsOf, supplyOf } from './stations.ts'
import { breakdownsOf, breaksOf, sectionsOf } from './stops.ts'
import { amount, type Names, namesOf, referPlace, whole, duration } from './values.ts'
import { zoneSpec, zonesOf } from './zones.ts'

/** seconds; from a sensor's change to the drive's start, where the drive says nothing else */
const REACTION_SECONDS = 0.1

export interface Specified {
  readonly spec: LineSpec
  /** errors and warnings */
  readonly problems: readonly LineProblem[]
}

/**
 * Errors and warnings are told with the line that comes of it, as far as it can be read.
 *
 * @throws LineError  where nothing of it can be read
 */
export function specOf(shape: Shape, given: LineSketch): Specified {
  const report = createReport()
  const sketch = checkForm(report, given)
  if (sketch === null) throw new LineError(report.problems)
  const zones = zonesOf(report, shape, sketch)
  const products = productsOf(report, sketch.products)
  const stationNames = namesOf(Object.keys(sketch.stations ?? {}), say.unknownStation)
  const zoneSpecs = zones.all.map((zone) => zoneSpec(report, sketch, zone, zones.names))
  const { stations, tasks } = stationsOf(report, sketch, zones.names, products.variants)
  const sections = sectionsOf(report, sketch, zones.names)
  const { drive = {} } = sketch
  const reactionSeconds = duration(report, 'drive.reaction', drive.reaction ?? REACTION_SECONDS, 'zero')
  const spec: LineSpec = {
    zones: zoneSpecs,
    paths: pathsOf(report, shape, sketch, { zones, stations: stationNames, variants: products.variants }),
    sections,
    carriers: carriersOf(report, shape, sketch, zones.names),
    reactionSeconds,
    staggerSeconds: duration(report, 'drive.stagger', drive.stagger ?? reactionSeconds, 'zero'),
    stations,
    tasks,
    ...rejectsOf(report, sketch, { stations, tasks }),
    operators: operatorsOf(report, sketch, stationNames),
    walks: walksOf(report, sketch, stationNames),
    supply: supplyOf(report, 'supply', sketch.supply ?? 'always', 'supply'),
    variants: products.variants.list,
    mix: products.mix,
    breakdowns: breakdownsOf(report, sketch, { zones: zoneSpecs, zoneNames: zones.names, stations: stationNames, sections }),
    repairCrews: sketch.repairCrews === undefined ? null : whole(report, 'repairCrews', sketch.repairCrews, 1),
    breaks: breaksOf(report, sketch),
    conveyorDuringBreaks: sketch.conveyorDuringBreaks ?? true,
    window: windowOf(report, sketch),
  }
  const wrong = report.problems.some(({ severity }) => severity === 'error')
  if (!wrong) return { spec, problems: [...report.problems, ...checkLine(spec)] }
  const isDrawn = !report.problems.some(({ path }) => LAYOUT.some((key) => path.startsWith(key)))
  return { spec, problems: [...report.problems, ...(isDrawn ? checkLayout(spec) : [])] }
}

/** what zones, the ways between them and the carriers on them are read from */
const LAYOUT = ['zone', 'own', 'beside', 'putIn', 'takeOut', 'path', 'drive', 'carriers', 'line'] as const

function carriersOf(report: Report, shape: Shape, { carriers }: LineSketch, zones: Names): CarriersSpec {
  const given = typeof carriers === 'number' ? { count: carriers } : carriers
  const usual = shape === 'straight' ? 'store' : 'spread'
  const { start = usual, length, width } = given
  const places = typeof start === 'string' ? start : start.flatMap((place) => referPlace(report, 'carriers.start', place, zones) ?? [])
  if (given.count === undefined && typeof start === 'string') report.add('carriers.count', say.missing('count', 'how many there are'))
  const count = whole(report, 'carriers.count', given.count ?? (typeof start === 'string' ? 1 : start.length), 1)
  if (typeof places !== 'string') {
    if (start.length !== count) report.add('carriers.start', say.startLength(start.length, count))
    const twice = places.find((place, k) => place !== STORE && places.indexOf(place) < k)
    if (twice !== undefined) report.add('carriers.start', say.startTwice(zones.list[twice]!))
  }
  return {
    count,
    lengthMetres: length === undefined ? null : amount(report, 'carriers.length', length, 'above zero'),
    widthMetres: width === undefined ? null : amount(report, 'carriers.width', width, 'above zero'),
    start: places,
  }
}

function windowOf(report: Report, { warmup = 0, end }: LineSketch): LineSpec['window'] {
  const window = { warmupSeconds: duration(report, 'warmup', warmup, 'zero'), endSeconds: duration(report, 'end', end, 'above zero') }
  if (window.endSeconds <= window.warmupSeconds) report.add('end', say.windowEmpty())
  return window
}
