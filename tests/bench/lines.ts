/** The lines that are timed. */
import { type LineSpec, loopLine, type StationSketch, type TaskSpec } from '@loopwright/line'

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
  const base = blockLoop(3, hours, { carriers: 24 })
  const path = base.paths[0]!
  const join = (from: number, to: number) => ({ ...path, from, to })
  const run = (first: number, last: number) => Array.from({ length: last - first }, (_, k) => join(first + k, first + k + 1))
  const tasks = ['load', 'fit', 'press', 'check', 'mend', 'pack']
  const place = (name: string, zone: number, duty: 'load' | 'work' | 'unload', task: string, mean: number) => ({
    ...base.stations[0]!,
    name,
    title: name,
    zone,
    load: null,
    work: null,
    unload: null,
    [duty]: [{ task: tasks.indexOf(task), seconds: [{ kind: 'lognormal', mean, cv: 0.2 } as const] }] satisfies TaskSpec[],
  })
  return {
    ...base,
    zones: base.zones.map((zone, z) => ({
      ...zone,
      divert: z === 9 ? 'free' : z === 21 ? 'alternate' : 'first',
      merge: z === 40 ? { kind: 'alternate' } : z === 45 ? { kind: 'priority', from: [44, 19] } : zone.merge,
    })),
    paths: [
      ...run(0, 9),
      ...[join(9, 10), ...run(10, 19), join(19, 45)],
      ...[join(9, 20), join(20, 21)],
      ...[join(21, 22), ...run(22, 30), join(30, 40)],
      ...[join(21, 31), ...run(31, 39), join(39, 40)],
      ...[...run(40, 59), join(59, 0)],
    ],
    stations: [
      place('load', 2, 'load', 'load', 20),
      place('press', 6, 'work', 'press', 15),
      place('fit A', 15, 'work', 'fit', 75),
      place('fit B', 26, 'work', 'fit', 75),
      place('fit C', 35, 'work', 'fit', 75),
      place('check', 48, 'work', 'check', 18),
      place('mend', 51, 'work', 'mend', 60),
      place('pack', 56, 'unload', 'pack', 20),
    ],
    tasks,
    operators: [
      { name: 'first', stations: [0, 1], start: 0 },
      { name: 'second', stations: [2, 3, 4], start: 2 },
      { name: 'third', stations: [4, 3, 2, 6], start: 4 },
      { name: 'fourth', stations: [5, 6, 7], start: 5 },
    ],
    walks: [0, 1, 2, 3, 4, 5, 6].map((s) => ({ between: [s, s + 1] as const, seconds: 3 })),
    supply: { name: 'supply', arrivals: { kind: 'every', seconds: { kind: 'exponential', mean: 50 } }, queueLimit: 10 },
    inspections: [{ task: 3, rejectProbability: 0.08 }],
    rework: [
      { task: 3, only: false },
      { task: 4, only: true },
    ],
  }
}
