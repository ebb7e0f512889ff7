/** Loops for the tests of what limits a line. */
import { type LineSpec, loopLine, PLAIN_STATION, type StationSketch, type StationSpec, type ZoneSketch } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'

export const constant = (value: number): Distribution => ({ kind: 'constant', value })

/** A complete station, for lines whose stations are replaced. */
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
  const first = tasks.filter(([where]) => where === 0).map(([where, seconds]) => [`task ${where}`, seconds])
  const stations: [string, StationSketch][] = [
    ['S0', { zone: 0, unload: {}, load: {}, ...(first.length === 0 ? {} : { work: Object.fromEntries(first) }) }],
    ...tasks.flatMap(([zone, seconds]): [string, StationSketch][] =>
      zone === 0 ? [] : [[`S${zone}`, { zone, work: { [`task ${zone}`]: seconds } }]],
    ),
  ]
  return loopLine({
    zones: Array.from({ length: zones }, (_, z) => `Z${z}`),
    paths: Array.from({ length: zones }, (_, from) => ({ from, move: at(moves, from), clear: at(clears, from) })),
    drive: { reaction: 0 },
    carriers: 1,
    stations: Object.fromEntries(stations),
    tasks: tasks.map(([where]) => `task ${where}`),
    products: { variants: ['one'] },
    end: 3600,
  }).spec
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
  const zones = Array.from({ length: 22 }, (_, index): ZoneSketch => {
    const isCorner = corners.includes(index)
    return {
      name: `Z${String(index + 1).padStart(2, '0')}`,
      release: isCorner || corners.includes((index + 1) % 22) ? 'single' : release,
      ...(isCorner ? { transfer: { lift: 2, lower: 1.6, enterOnlyIfExitClear: true } } : {}),
    }
  })
  return loopLine({
    zones,
    zoneLength: 1.5,
    paths: zones.map((_, from) => ({ from, across: false })),
    drive: { speed: 0.25, acceleration: 0.4, reaction: 0.15, stagger: 0.3, sensorBeforeStop: 0.078125 },
    carriers: { count: 12, length: 1.2, width: 1.2 },
    stations: Object.fromEntries(
      TIMES.map(([zone, cv, means], index): [string, StationSketch] => {
        const seconds = variants.map(({ base, adds }) => ({ kind: 'lognormal', mean: means[base]! + (adds[zone] ?? 0), cv }) as const)
        const duty = zone === 1 ? 'load' : zone === 18 ? 'unload' : 'work'
        return [`S${index + 1}`, { zone, title: `S${zone}`, [duty]: { [`task ${zone}`]: seconds }, release: 2 }]
      }),
    ),
    products: { variants: Object.fromEntries(variants.map(({ share }, index) => [`variant ${index}`, share])) },
    warmup: 30_000,
    end: 60_000,
  }).spec
}
