/** The lines that are timed. */
import { graphLine, type LineSpec, loopLine, type StationSketch, type TaskSpec } from '@loopwright/line'

const MEANS = [38, 44, 52, 47, 41, 50]
const PLACES = [0, 3, 7, 10, 13, 17]
const BLOCK = 20
/** multiples of it lie evenly between whole numbers */
const GOLDEN = (Math.sqrt(5) - 1) / 2

export interface BlockOptions {
  /** in all; default: 11 for the first block, 10 for each further one */
  readonly carriers?: number
  /** each block loads at its first station and unloads at its last, so that products are everywhere from the start; default: the whole loop does */
  readonly each?: boolean
}

/**
 * A loop of blocks of 20 zones of 1.04 m with six stations each and 11 carriers for the first block, 10 for each further one: load at the first station, unload at the last.
 *
 * @param blocks  ≥ 1
 * @param hours   simulated time, from empty
 */
export function blockLoop(
  blocks: number,
  hours: number,
  { carriers = blocks === 1 ? 11 : 10 * blocks, each = false }: BlockOptions = {},
): LineSpec {
  const zones = BLOCK * blocks
  const count = MEANS.length * blocks
  // products of one block never see the tasks of another: they are the same six
  const stretch = each ? MEANS.length : count
  const station = (s: number): [string, StationSketch] => {
    const work = { [`T${(s % stretch) + 1}`]: { kind: 'lognormal', mean: MEANS[s % MEANS.length]!, cv: 0.15 } as const }
    const duty = s % stretch === 0 ? 'load' : s % stretch === stretch - 1 ? 'unload' : 'work'
    return [`S${s + 1}`, { zone: BLOCK * Math.floor(s / MEANS.length) + PLACES[s % MEANS.length]!, [duty]: work }]
  }
  return loopLine({
    zones: Array.from({ length: zones }, (_, z) => `Z${z + 1}`),
    zoneLength: 1.04,
    drive: { speed: 0.2, acceleration: 0.5 },
    carriers: { count: carriers, length: 0.75, width: 0.75 },
    stations: Object.fromEntries(Array.from({ length: count }, (_, s) => station(s))),
    products: { variants: ['only'], mix: { kind: 'pattern', sequence: ['only'] } },
    end: 3600 * hours,
  }).spec
}

/**
 * A loop in which carriers do hardly anything but move, each path of a length of its own, so that hardly any two moves happen together: load in the first zone, unload ten zones on, a
 * second each.
 *
 * @param zones     ≥ 20
 * @param carriers  below the number of zones
 * @param hours     simulated time, from empty
 */
export function movesLoop(zones: number, carriers: number, hours: number): LineSpec {
  const blocks = blockLoop(zones / BLOCK, hours, { carriers })
  const second: TaskSpec[] = [{ task: 0, seconds: [{ kind: 'constant', value: 1 }] }]
  const [load, unload] = [blocks.stations[0]!, blocks.stations[3]!]
  return {
    ...blocks,
    paths: blocks.paths.map((path, p) => ({ ...path, distanceMetres: 1.04 + 0.4 * ((p * GOLDEN) % 1) })),
    stations: [
      { ...load, load: second, work: null, unload: null },
      { ...unload, load: null, work: null, unload: second },
    ],
    tasks: ['second'],
  }
}

/**
 * A line with something of everything that a loop of stations lacks: 60 zones, two diverts into three lanes with a place to fit each, two merges, four operators who share
 * eight stations, products that come, an inspection, mending in the same lap and a second lap to be inspected again.
 *
 * @param hours  simulated time, from empty
 */
export function generalLine(hours: number): LineSpec {
  const zone = (number: number): string => `Z${number + 1}`
  const way = (...zones: readonly number[]): string => zones.map(zone).join(' > ')
  const run = (first: number, last: number): number[] => Array.from({ length: last - first + 1 }, (_, k) => first + k)
  const times = (mean: number) => ({ kind: 'lognormal', mean, cv: 0.2 }) as const
  const stations = ['load', 'press', 'fit A', 'fit B', 'fit C', 'check', 'mend', 'pack']
  return graphLine({
    zones: run(0, 59).map(zone),
    zoneLength: 1.04,
    drive: { speed: 0.2, acceleration: 0.5 },
    own: {
      [zone(9)]: { divert: 'free' },
      [zone(21)]: { divert: 'alternate' },
      [zone(40)]: { merge: 'alternate' },
      [zone(45)]: { merge: { priority: [44, 19] } },
    },
    paths: [
      way(...run(0, 9)),
      way(9, ...run(10, 19), 45),
      way(9, 20, 21),
      way(21, ...run(22, 30), 40),
      way(21, ...run(31, 39), 40),
      way(...run(40, 59), 0),
    ],
    carriers: { count: 24, length: 0.75, width: 0.75 },
    tasks: ['load', 'fit', 'press', 'check', 'mend', 'pack'],
    stations: {
      load: { zone: 2, load: { load: times(20) } },
      press: { zone: 6, work: { press: times(15) } },
      'fit A': { zone: 15, work: { fit: times(75) } },
      'fit B': { zone: 26, work: { fit: times(75) } },
      'fit C': { zone: 35, work: { fit: times(75) } },
      check: { zone: 48, work: { check: times(18) } },
      mend: { zone: 51, work: { mend: times(60) } },
      pack: { zone: 56, unload: { pack: times(20) } },
    },
    operators: {
      first: { stations: [0, 1] },
      second: { stations: [2, 3, 4] },
      third: { stations: [4, 3, 2, 6] },
      fourth: { stations: [5, 6, 7] },
    },
    walks: stations.slice(1).map((station, s) => ({ between: [stations[s]!, station], lasts: 3 })),
    products: { variants: ['only'], mix: { kind: 'pattern', sequence: ['only'] } },
    supply: { every: { kind: 'exponential', mean: 50 }, queue: 10 },
    inspections: { check: 0.08 },
    rework: { check: 'again', mend: 'only' },
    end: 3600 * hours,
  }).spec
}
