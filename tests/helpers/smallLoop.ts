/**
 * A complete LineSpec from the little that a test wants to say, by the builder of lines with the usual values of these tests, and a run of it as lines that a person reads.
 * It has over 300 lines because every wish and every event has its words here; `smallGraph.ts` adds lines that are no single loop.
 * Zones are called Z0, Z1 …, a station in zone 2 is called S2; path i leads from zone i to the next one.
 */
import {
  type BreakdownPart,
  type BreakdownSpec,
  type LineSpec,
  type LineSketch,
  loopLine,
  type MixSpec,
  type PathSketch,
  type Position,
  type RunResult,
  STORE,
  type StationSketch,
  simulate,
  TRACE_KINDS,
  Trace,
  type ZoneSketch,
} from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import { expect } from 'vitest'
import { specOf } from '../../packages/line/src/builder/lineSpec.ts'

/** seconds, or a distribution of them */
export type Time = number | Distribution

/** `true`: the duty without a task (0 s); a time: one task of the station's own; else by task name a time, or one per variant (null: none). */
export type Duty = true | Time | Readonly<Record<string, Time | readonly (Time | null)[]>>

export interface StationWish {
  readonly at: number
  readonly name?: string
  readonly unload?: Duty
  readonly load?: Duty
  readonly work?: Duty
  readonly release?: Time
  readonly automatic?: boolean
  readonly worksInBreaks?: boolean
}

/**
 * Everything but the zones may be left out. Unless told otherwise: one variant, always the same; single release; no way to stop; window (0, 100].
 * Without `move` the drive gives the times: v = 1 m/s, a = 0.5 m/s² (ramp 1 s, x = 1 m), zones of 4 m, carriers of 2 × 2 m, sensor 1 m before the stop point, ε = 0.5 s.
 * So M = 4 (speed, speed), 5 (one ramp), 6 s (two ramps); C = 1 + 0.5 = 1.5 (speed), 1 + 1 + 0.5 = 2.5 s (rest).
 */
export interface Wish {
  readonly zones: number
  /** zones where carriers 0, 1 … stand; or how many, spread */
  readonly start?: readonly number[] | number
  readonly packed?: boolean
  /** given move times: for all paths, or by path (null: from the drive) */
  readonly move?: Time | readonly (Time | null)[]
  /** given clear times; `move`: the same draw */
  readonly clear?: Time | 'move' | readonly (Time | 'move' | null)[]
  readonly drive?: Partial<Drive>
  /** zones left by train release; true: all */
  readonly train?: true | readonly number[]
  readonly stagger?: number
  readonly stations?: readonly StationWish[]
  /** by zone */
  readonly transfers?: Readonly<Record<number, TransferWish>>
  /** zones whose path out is travelled sideways */
  readonly across?: readonly number[]
  readonly stops?: readonly StopWish[]
  /** start and length */
  readonly breaks?: readonly (readonly [number, number])[]
  readonly conveyorStops?: boolean
  readonly variants?: number
  readonly mix?: MixSpec
  readonly until?: number
  readonly warmup?: number
  /** a line that the builder refuses, for what the engine makes of it */
  readonly odd?: boolean
}

export interface Drive {
  readonly v: number
  readonly a: number | null
  readonly distance: number
  readonly length: number
  readonly width: number
  readonly sensor: number
  readonly reaction: number
}

export interface TransferWish {
  readonly lift: number
  readonly lower: number
  /** position of the way in and of the way out; default low, high */
  readonly in?: Position
  readonly out?: Position
  readonly exitClear?: boolean
}

export interface StopWish {
  readonly name: string
  readonly on: BreakdownPart
  readonly clock?: 'operating' | 'calendar'
  /** times to failure in turn; a number: the first, and then none that comes within any test */
  readonly after: number | Distribution | readonly number[]
  readonly repair: number | Distribution | readonly number[]
}

const DRIVE: Drive = { v: 1, a: 0.5, distance: 4, length: 2, width: 2, sensor: 1, reaction: 0.5 }
/** later than any window of a small loop */
const NEVER = 2 ** 30

export const seconds = (time: Time): Distribution => (typeof time === 'number' ? { kind: 'constant', value: time } : time)

function byPath<T>(given: T | readonly (T | null)[] | undefined, path: number): T | null {
  if (given === undefined) return null
  return Array.isArray(given) ? ((given as readonly (T | null)[])[path] ?? null) : (given as T)
}

/** Complete description of a small closed loop. */
export function smallLoop(wish: Wish): LineSpec {
  const drive = { ...DRIVE, ...wish.drive }
  const transfer = (zone: number) => wish.transfers?.[zone]
  const variants = Array.from({ length: wish.variants ?? 1 }, (_, v) => `variant ${v}`)
  const sketch: LineSketch = {
    zones: Array.from({ length: wish.zones }, (_, z): ZoneSketch => {
      const wanted = transfer(z)
      return {
        name: `Z${z}`,
        release: wish.train === true || wish.train?.includes(z) === true ? 'train' : 'single',
        ...(wanted === undefined
          ? {}
          : { transfer: { lift: wanted.lift, lower: wanted.lower, enterOnlyIfExitClear: wanted.exitClear ?? false } }),
      }
    }),
    zoneLength: drive.distance,
    paths: Array.from({ length: wish.zones }, (_, from): PathSketch => {
      const [move, clear] = [byPath<Time>(wish.move, from), byPath<Time | 'move'>(wish.clear, from)]
      const to = transfer((from + 1) % wish.zones)
      return {
        from,
        across: wish.across?.includes(from) ?? false,
        fromPosition: transfer(from) === undefined ? 'low' : (transfer(from)!.out ?? 'high'),
        toPosition: to?.in ?? 'low',
        ...(move === null ? {} : { move }),
        ...(clear === null ? {} : { clear }),
      }
    }),
    drive: {
      ...{ speed: drive.v, reaction: drive.reaction, sensorBeforeStop: drive.sensor },
      ...(drive.a === null ? {} : { acceleration: drive.a }),
      stagger: wish.stagger ?? drive.reaction,
    },
    carriers: {
      ...(typeof wish.start === 'object' ? {} : { count: wish.start ?? 1 }),
      length: drive.length,
      width: drive.width,
      start: typeof wish.start === 'object' ? wish.start : wish.packed === true ? 'packed' : 'spread',
    },
    stations: Object.fromEntries((wish.stations ?? []).map((station) => [station.name ?? `S${station.at}`, stationOf(station)])),
    products: { variants, mix: { kind: 'pattern', sequence: [0] } },
    breaks: (wish.breaks ?? []).map(([after, lasts]) => ({ after, lasts })),
    conveyorDuringBreaks: wish.conveyorStops !== true,
    warmup: wish.warmup ?? 0,
    end: wish.until ?? 100,
  }
  const spec = wish.odd === true ? specOf('loop', sketch).spec : loopLine(sketch).spec
  return { ...spec, ...(wish.mix === undefined ? {} : { mix: wish.mix }), breakdowns: (wish.stops ?? []).map(breakdownOf) }
}

/** A test gives the part by its index, and several times in turn. */
const breakdownOf = ({ name, on, clock, after, repair }: StopWish): BreakdownSpec => ({
  name,
  part: on,
  clock: clock ?? 'operating',
  timeToFailureSeconds: timesOf(typeof after === 'number' ? [after, NEVER] : after),
  repairSeconds: timesOf(typeof repair === 'number' ? [repair] : repair),
})

const timesOf = (times: Distribution | readonly number[]): Distribution =>
  Array.isArray(times) ? { kind: 'replay', values: times as readonly number[] } : (times as Distribution)

function stationOf(wish: StationWish): StationSketch {
  const duties = (['unload', 'load', 'work'] as const).flatMap((kind) => {
    const duty = wish[kind]
    return duty === undefined ? [] : [[kind, duty === true ? {} : duty] as const]
  })
  return {
    zone: wish.at,
    ...Object.fromEntries(duties),
    release: wish.release ?? 0,
    automatic: wish.automatic ?? wish.worksInBreaks ?? false,
    worksInBreaks: wish.worksInBreaks ?? false,
  }
}

export interface Told {
  readonly result: RunResult
  readonly lines: readonly string[]
}

/**
 * A run with its events in words; with all invariants checked. It is run once more with simultaneous timers stored the other way round, and without
 * a trace and without checks (which takes shorter ways inside): trace and result must be the same.
 */
export function tell(spec: LineSpec, seed = 'hand', replication = 0): Told {
  const trace = new Trace()
  const result = simulate(spec, { seed, replication, trace, verify: true })
  const again = new Trace()
  const backwards = simulate(spec, { seed, replication, trace: again, verify: true, backwards: true })
  const untraced = simulate(spec, { seed, replication, verify: true })
  const plain = simulate(spec, { seed, replication })
  if (again.hash.digest() !== trace.hash.digest()) throw new Error('the order in which simultaneous timers are stored shows in the trace')
  expect(backwards).toEqual(result)
  expect(untraced).toEqual(result)
  expect(plain).toEqual(result)
  return { result, lines: Array.from({ length: trace.length }, (_, k) => say(spec, trace, k)) }
}

/**
 * The events of a run as lines such as `6 rest Z3 c0`.
 *
 * @param words  keep only events of these words, such as `leave`, `rest`, `load`; all, if none is given
 */
export function timeline(spec: LineSpec, ...words: readonly string[]): string[] {
  return tell(spec).lines.filter((line) => words.length === 0 || words.includes(line.split(' ')[1]!))
}

/** One event in words. */
function say(spec: LineSpec, trace: Trace, k: number): string {
  const place = trace.places[k]!
  const detail = trace.details[k]!
  const carrier = `c${trace.carriers[k]}`
  const zone = (index: number) => (index === STORE ? 'store' : spec.zones[index]!.name)
  const leaves = (): string => {
    const { from, to } = spec.paths[place]!
    const isOneOfSeveral = from === STORE || to === STORE || spec.paths.filter((path) => path.from === from).length > 1
    return isOneOfSeveral ? `${zone(from)} to ${zone(to)}` : zone(from)
  }
  const way = ['out', 'back', 'in'][detail]
  const station = () => spec.stations[place]!.name
  const operator = () => spec.operators[detail]?.name ?? `own operator ${detail}`
  const duty = ['unload', 'load', 'work'][detail]
  const words = (): string => {
    const kind = TRACE_KINDS[trace.kinds[k]!]!
    switch (kind) {
      case 'move start':
        return `leave ${leaves()} ${carrier}${detail === 1 ? ' at speed' : ''}`
      case 'clear':
        return `clear ${zone(place)}`
      case 'look':
        return `look ${zone(place)} ${carrier}`
      case 'brake':
        return `brake ${zone(place)} ${carrier}`
      case 'rest':
        return `rest ${zone(place)} ${carrier}`
      case 'duty start':
        return `${duty} begins ${station()} ${carrier}`
      case 'duty end':
        return `${duty} ends ${station()} ${carrier}`
      case 'release start':
        return `release begins ${station()} ${carrier}`
      case 'release end':
        return `release ends ${station()} ${carrier}`
      case 'change start':
        return `turn ${zone(place)} ${way}`
      case 'change end':
        return `turned ${zone(place)} ${way}`
      case 'load':
        return `take p${detail} ${carrier}`
      case 'unload':
        return `off p${detail} ${carrier}`
      case 'stop begin':
        return `stop ${stopName(spec, place)}`
      case 'stop end':
        return `${place < spec.breakdowns.length ? 'repaired' : 'reset'} ${stopName(spec, place)}`
      case 'break begin':
        return 'break begins'
      case 'break end':
        return 'break ends'
      case 'standstill':
        return 'standstill'
      case 'operator sent':
        return `send ${operator()} to ${station()}`
      case 'operator there':
        return `${operator()} at ${station()}`
      case 'operator free':
        return `${operator()} free`
      case 'product arrival':
        return `product comes to supply ${place}`
      case 'turned away':
        return `product turned away from supply ${place}`
      case 'receiver start':
        return `receiver of ${station()} begins`
      case 'receiver end':
        return `receiver of ${station()} ends`
      case 'reject':
        return `reject p${detail} ${carrier}`
      case 'repair start':
        return `repair of ${spec.breakdowns[place]!.name} begins`
    }
  }
  return `${trace.seconds[k]} ${words()}`
}

/** The breakdown source; past them the safety stop of a station, by station. */
function stopName(spec: LineSpec, place: number): string {
  const safety = spec.stations.filter(({ safetyStop }) => safetyStop !== null)
  return spec.breakdowns[place]?.name ?? `safety ${safety[place - spec.breakdowns.length]!.name}`
}
