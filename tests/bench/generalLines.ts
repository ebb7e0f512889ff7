/** Lines with each of the parts that a plain loop lacks, for counting what the event loop allocates. */
import type { LineSpec, PathSpec, SupplySpec, TaskSpec } from '@loopwright/line'
import { STORE } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import { blockLoop } from './lines.ts'

const exponential = (mean: number): Distribution => ({ kind: 'exponential', mean })
const HOURS = 20_000
const loop = (): LineSpec => blockLoop(1, HOURS)

const supply = (name: string, mean: number, queueLimit: number | null): SupplySpec => ({
  name,
  arrivals: { kind: 'every', seconds: exponential(mean) },
  queueLimit,
})

/** Two operators for six stations, one of which needs both; walks, releases, a push and a pull. */
function operators(): LineSpec {
  const line = loop()
  const stations = line.stations.map((_, s) => s)
  return {
    ...line,
    stations: line.stations.map((station, s) => ({ ...station, releaseSeconds: exponential(2), operatorsNeeded: s === 2 ? 2 : 1 })),
    paths: line.paths.map((path, p): PathSpec => {
      if (p !== 3 && p !== 8) return path
      const manual = { kind: p === 3 ? 'push' : 'pull', station: p === 3 ? 1 : 2 } as const
      return { ...path, moveSeconds: exponential(6), clearSeconds: 'move', manual }
    }),
    operators: [
      { name: 'one', stations, start: 0 },
      { name: 'two', stations, start: 3 },
      { name: 'three', stations: [4, 5], start: 4 },
    ],
    walks: stations.slice(1).map((s) => ({ between: [s - 1, s] as const, seconds: 3 })),
  }
}

/** Products of three variants that come to a limited queue, and a second load with its own supply; receivers; inspections and rework. */
function goods(): LineSpec {
  const line = loop()
  const variants = ['a', 'b', 'c']
  const every = (tasks: readonly TaskSpec[] | null): TaskSpec[] | null =>
    tasks?.map(({ task, seconds }) => ({ task, seconds: variants.map((_, v) => (v === 2 && task === 3 ? null : seconds[0]!)) })) ?? null
  const last = line.stations.length - 1
  return {
    ...line,
    variants,
    mix: { kind: 'random', shares: [0.5, 0.3, 0.2] },
    stations: line.stations.map((station, s) => ({
      ...station,
      unload: every(s === 2 ? [{ task: last, seconds: station.work![0]!.seconds }] : station.unload),
      load: every(s === 2 ? [{ task: 0, seconds: station.work![0]!.seconds }] : station.load),
      work: every(station.work),
      accepts: s === last ? ('all' as const) : ('good' as const),
      supply: s === 2 ? supply('supply/S3', 60, null) : null,
      receiver: s === 2 || s === last ? { cycleSeconds: exponential(50), queue: 2 } : null,
    })),
    supply: supply('supply', 45, 3),
    inspections: [{ task: 3, rejectProbability: 0.1 }],
    rework: [{ task: 1, only: false }],
  }
}

/** Breakdowns of every part on both clocks with one crew, safety stops, sections, and breaks without end. */
function stops(): LineSpec {
  const line = loop()
  const zones = line.zones.map((_, z) => z)
  return {
    ...line,
    sections: [
      { name: 'left', zones: zones.slice(0, 10) },
      { name: 'right', zones: zones.slice(10) },
    ],
    stations: line.stations.map((station, s) => ({
      ...station,
      safetyStop: s % 2 === 0 ? { probability: 0.05, resetSeconds: exponential(20) } : null,
    })),
    breakdowns: (
      [
        ['station', 1, 'operating'],
        ['station', 2, 'calendar'],
        ['zone', 5, 'operating'],
        ['zone', 12, 'calendar'],
        ['section', 0, 'operating'],
        ['section', 1, 'calendar'],
      ] as const
    ).map(([kind, index, clock]) => ({
      name: `${kind} ${index}`,
      part: { kind, index },
      clock,
      timeToFailureSeconds: exponential(600),
      repairSeconds: { kind: 'lognormal', mean: 30, cv: 0.5 } as const,
    })),
    repairCrews: 1,
    breaks: Array.from({ length: HOURS / 4 }, (_, k) => ({ startSeconds: 14_400 * k + 7_000, lengthSeconds: 600 })),
    conveyorDuringBreaks: false,
  }
}

/** The loop with a bypass by lifting transfers, one of which waits for its exit, three ways in and two out; it begins and ends in the store. */
function graph(): LineSpec {
  const line = loop()
  const [zone, path] = [line.zones[1]!, line.paths[1]!]
  const way = (from: number, to: number, more: Partial<PathSpec> = {}): PathSpec => ({ ...path, from, to, ...more })
  const at = line.zones.length
  const lift = (enterOnlyIfExitClear: boolean) => ({ liftSeconds: 2, lowerSeconds: 1.5, enterOnlyIfExitClear })
  return {
    ...line,
    zones: [
      ...line.zones.map((one, z) => ({
        ...one,
        transfer: z === 4 ? lift(false) : z === 9 ? lift(true) : null,
        divert: z === 4 ? ('free' as const) : z === 14 ? ('alternate' as const) : ('first' as const),
        merge: z === 9 ? ({ kind: 'priority', from: [8] } as const) : z === 16 ? ({ kind: 'alternate' } as const) : one.merge,
      })),
      { ...zone, name: 'bypass 1' },
      { ...zone, name: 'bypass 2' },
      { ...zone, name: 'lane' },
    ],
    paths: [
      ...line.paths.slice(0, 19),
      way(19, STORE),
      way(STORE, 0),
      way(4, at, { fromPosition: 'high', across: true }),
      way(at, at + 1, { across: true }),
      way(at + 1, 9, { toPosition: 'high', across: true }),
      way(14, at + 2),
      way(at + 2, 16),
    ],
    sections: [{ name: 'line', zones: Array.from({ length: at + 3 }, (_, z) => z) }],
    carriers: { ...line.carriers, count: 12, start: 'store' },
  }
}

/** The loop with a transfer at each of four corners, two entered only if their exit is clear; stops of stations and transfers, and breaks. */
function corners(): LineSpec {
  const line = loop()
  const isCorner = (z: number): boolean => z % 5 === 1
  const { breaks } = stops()
  return {
    ...line,
    zones: line.zones.map((zone, z) => ({
      ...zone,
      transfer: isCorner(z) ? { liftSeconds: 2, lowerSeconds: 1.5, enterOnlyIfExitClear: z > 10 } : null,
    })),
    paths: line.paths.map((path, p) => (isCorner(p) ? { ...path, fromPosition: 'high', across: true } : path)),
    breakdowns: (
      [
        ['station', 1],
        ['station', 4],
        ['transfer', 6],
        ['transfer', 16],
      ] as const
    ).map(([kind, index]) => ({
      name: `${kind} ${index}`,
      part: { kind, index },
      clock: 'operating',
      timeToFailureSeconds: exponential(600),
      repairSeconds: { kind: 'lognormal', mean: 30, cv: 0.5 } as const,
    })),
    breaks,
    conveyorDuringBreaks: true,
  }
}

/** By name: the plain loop, and those above. */
export const GENERAL_LINES: Readonly<Record<string, () => LineSpec>> = { plain: loop, operators, goods, stops, graph, corners }
