/** Loops for the tests of this folder; no part of what is built. */
import type { Distribution } from '@loopwright/stats'
import { PLAIN_LINE, PLAIN_PATH, PLAIN_STATION, PLAIN_ZONE, wholeLine } from '../build/plain.ts'
import type { LineSpec, PathSpec, StationSpec, ZoneSpec } from '../spec.ts'

export const constant = (value: number): Distribution => ({ kind: 'constant', value })
const zone = (name: string): ZoneSpec => ({
  ...PLAIN_ZONE,
  name,
  lengthMetres: 1.5,
  sensorBeforeStopMetres: 0,
  release: 'single',
  transfer: null,
})

export const station = (at: number, duties: Partial<StationSpec>): StationSpec => ({
  name: `S${at}`,
  title: `S${at}`,
  zone: at,
  unload: null,
  load: null,
  work: null,
  releaseSeconds: constant(0),
  ...PLAIN_STATION,
  ...duties,
})

/** A loop with given times: station in zone 0 unloads and loads, tasks work on the product. */
export function givenLoop(
  zones: number,
  tasks: readonly (readonly [zone: number, seconds: number])[],
  moves: number | readonly number[],
  clears: number | readonly number[],
): LineSpec {
  const at = (of: number | readonly number[], index: number): number => (typeof of === 'number' ? of : of[index]!)
  const path = (from: number): PathSpec => ({
    ...PLAIN_PATH,
    from,
    to: (from + 1) % zones,
    distanceMetres: null,
    speedMetresPerSecond: null,
    accelerationMetresPerSecondSquared: null,
    across: false,
    fromPosition: 'low',
    toPosition: 'low',
    moveSeconds: constant(at(moves, from)),
    clearSeconds: constant(at(clears, from)),
  })
  const work = (task: number, seconds: number) => [{ task, seconds: [constant(seconds)] }]
  const first = tasks.findIndex(([where]) => where === 0)
  return {
    ...PLAIN_LINE,
    sections: wholeLine(zones),
    zones: Array.from({ length: zones }, (_, index) => zone(`Z${index}`)),
    paths: Array.from({ length: zones }, (_, index) => path(index)),
    carriers: { count: 1, lengthMetres: null, widthMetres: null, start: 'spread' },
    reactionSeconds: 0,
    staggerSeconds: 0,
    stations: [
      station(0, { unload: [], load: [], work: first < 0 ? null : work(first, tasks[first]![1]) }),
      ...tasks.flatMap(([where, seconds], task) => (where === 0 ? [] : [station(where, { work: work(task, seconds) })])),
    ],
    tasks: tasks.map(([where]) => `task ${where}`),
    variants: ['one'],
    mix: { kind: 'random', shares: [1] },
    breakdowns: [],
    breaks: [],
    conveyorDuringBreaks: true,
    window: { warmupSeconds: 0, endSeconds: 3600 },
  }
}

const TIMES: readonly (readonly [zone: number, cv: number, seconds: readonly number[]])[] = [
  [1, 0.1, [38, 38, 44, 48]],
  [3, 0.12, [56, 58, 66, 72]],
  [6, 0.12, [54, 58, 64, 70]],
  [12, 0.15, [50, 52, 58, 64]],
  [14, 0.12, [46, 50, 56, 62]],
  [16, 0.02, [60, 60, 66, 66]],
  [18, 0.1, [36, 36, 42, 46]],
]
const SHARES = [0.4, 0.3, 0.2, 0.1]
const COLD = [0.2, 0.4, 0.5, 0.6]
const QUIET = 0.3

/** A base line of 22 zones of 1.5 m with four corners, seven stations, four variants and two options. Invented. */
export function baseLine(release: 'single' | 'train'): LineSpec {
  const corners = [8, 10, 19, 21]
  const variants = SHARES.flatMap((share, base) =>
    [false, true].flatMap((cold) =>
      [false, true].map((quiet) => ({
        share: share * (cold ? COLD[base]! : 1 - COLD[base]!) * (quiet ? QUIET : 1 - QUIET),
        base,
        adds: { 12: cold ? 16 : 0, 14: quiet ? 18 : 0 } as Record<number, number>,
      })),
    ),
  )
  const zones = Array.from({ length: 22 }, (_, index): ZoneSpec => {
    const transfer = corners.includes(index) ? { liftSeconds: 2, lowerSeconds: 1.6, enterOnlyIfExitClear: true } : null
    const feedsCorner = corners.includes((index + 1) % 22)
    return {
      ...PLAIN_ZONE,
      name: `Z${String(index + 1).padStart(2, '0')}`,
      lengthMetres: 1.5,
      sensorBeforeStopMetres: transfer === null ? 0.078125 : 0,
      release: feedsCorner ? 'single' : release,
      transfer,
    }
  })
  return {
    ...PLAIN_LINE,
    sections: wholeLine(22),
    zones,
    paths: zones.map((_, from) => ({
      ...PLAIN_PATH,
      from,
      to: (from + 1) % 22,
      distanceMetres: 1.5,
      speedMetresPerSecond: 0.25,
      accelerationMetresPerSecondSquared: 0.4,
      across: false,
      fromPosition: corners.includes(from) ? 'high' : 'low',
      toPosition: 'low',
      moveSeconds: null,
      clearSeconds: null,
    })),
    carriers: { count: 12, lengthMetres: 1.2, widthMetres: 1.2, start: 'spread' },
    reactionSeconds: 0.15,
    staggerSeconds: 0.3,
    stations: TIMES.map(([at, cv, means], index) => {
      const tasks = [
        {
          task: index,
          seconds: variants.map(({ base, adds }) => ({ kind: 'lognormal', mean: means[base]! + (adds[at] ?? 0), cv }) as const),
        },
      ]
      const duty = at === 1 ? { load: tasks } : at === 18 ? { unload: tasks } : { work: tasks }
      return station(at, { ...duty, name: `S${index + 1}`, releaseSeconds: constant(2) })
    }),
    tasks: TIMES.map(([at]) => `task ${at}`),
    variants: variants.map((_, index) => `variant ${index}`),
    mix: { kind: 'random', shares: variants.map((variant) => variant.share) },
    breakdowns: [],
    breaks: [],
    conveyorDuringBreaks: true,
    window: { warmupSeconds: 30_000, endSeconds: 60_000 },
  }
}
