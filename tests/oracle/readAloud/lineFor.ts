/** Complete LineSpecs for tests, from the little that a test wants to say. */

import type { BreakdownPart, BreakdownSpec, LineSketch, LineSpec, ProductsSketch, StationSpec, TaskSpec } from '@loopwright/line'
import { loopLine, PLAIN_STATION } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'

export const seconds = (value: number): Distribution => ({ kind: 'constant', value })

/** one or several distributions: for all, or by index */
type Times = Distribution | number | readonly (Distribution | number)[]

function timeAt(times: Times, index: number): Distribution {
  const time = Array.isArray(times) ? (times as readonly (Distribution | number)[])[index]! : (times as Distribution | number)
  return typeof time === 'number' ? seconds(time) : time
}

/** A closed loop with given times, no station, N carriers at the zones named. */
export function givenLoop(zones: number, start: readonly number[], move: Times, clear: Times | 'move'): LineSpec {
  return loopLine({ ...pathsWith(zones, move, clear), carriers: { start }, end: 100 }).spec
}

/** Zones Z0, Z1 … without a drive, and one product. */
export const pathsWith = (
  zones: number,
  move: Times,
  clear: Times | 'move',
): Pick<LineSketch, 'zones' | 'paths' | 'drive' | 'products'> => ({
  zones: named(zones),
  paths: named(zones).map((_, from) => ({ from, move: timeAt(move, from), clear: clear === 'move' ? 'move' : timeAt(clear, from) })),
  drive: { reaction: 0 },
  products: ONE,
})

/**
 * A closed loop with drives: every distance 2 m, v = 1 m/s, a = 0.5 m/s², so x = 1 m, ramp = 1 s:
 * M(speed, speed) = 2, M(rest, speed) = M(speed, rest) = 3, M(rest, rest) = 4 s;
 * carrier 1.5 m, sensor at the stop point, ε = 0.25 s: C(speed) = 1.75, C(rest) = 2.75 s. Stagger 0.5 s.
 */
export function drivenLoop(zones: number, start: readonly number[]): LineSpec {
  return loopLine({
    zones: named(zones),
    zoneLength: 2,
    drive: { speed: 1, acceleration: 0.5, reaction: 0.25, stagger: 0.5 },
    carriers: { start, length: 1.5, width: 1.5 },
    products: ONE,
    end: 100,
  }).spec
}

const named = (zones: number): string[] => Array.from({ length: zones }, (_, zone) => `Z${zone}`)
const ONE: ProductsSketch = { variants: ['one'], mix: { kind: 'pattern', sequence: [0] } }

interface StationWish {
  readonly zone: number
  /** seconds of one task each; true: the duty without a task */
  readonly unload?: number | true
  readonly load?: number | true
  readonly work?: Distribution | number
  readonly release?: number
  readonly automatic?: boolean
  readonly worksInBreaks?: boolean
}

/** Adds stations S0, S1 … with tasks of their own, one variant. */
export function withStations(spec: LineSpec, ...wishes: readonly StationWish[]): LineSpec {
  const tasks: string[] = []
  const duty = (station: number, name: string, time: Distribution | number | true | undefined): readonly TaskSpec[] | null => {
    if (time === undefined) return null
    if (time === true) return []
    tasks.push(`${name} ${station}`)
    return [{ task: tasks.length - 1, seconds: spec.variants.map(() => (typeof time === 'number' ? seconds(time) : time)) }]
  }
  const stations: StationSpec[] = wishes.map((wish, index) => ({
    name: `S${index}`,
    title: `S${index}`,
    zone: wish.zone,
    unload: duty(index, 'unload', wish.unload),
    load: duty(index, 'load', wish.load),
    work: duty(index, 'work', wish.work),
    releaseSeconds: seconds(wish.release ?? 0),
    ...PLAIN_STATION,
    operatorsNeeded: wish.automatic === true ? 0 : 1,
    worksInBreaks: wish.worksInBreaks ?? false,
  }))
  return { ...spec, stations, tasks }
}

export function withTransfer(
  spec: LineSpec,
  zone: number,
  lift: number,
  lower: number,
  wayIn: 'low' | 'high',
  exitClear = false,
): LineSpec {
  const wayOut = wayIn === 'low' ? 'high' : 'low'
  return {
    ...spec,
    zones: spec.zones.map((z, index) =>
      index === zone ? { ...z, transfer: { liftSeconds: lift, lowerSeconds: lower, enterOnlyIfExitClear: exitClear } } : z,
    ),
    paths: spec.paths.map((p) => ({
      ...p,
      ...(p.to === zone ? { toPosition: wayIn } : {}),
      ...(p.from === zone ? { fromPosition: wayOut } : {}),
    })),
  }
}

/** Adds a breakdown: up for `up`, down for `repair` seconds, the values of a list taken in turn. */
export function withStop(
  spec: LineSpec,
  part: BreakdownPart,
  clock: 'operating' | 'calendar',
  up: readonly number[],
  repair: readonly number[],
): LineSpec {
  const source: BreakdownSpec = {
    name: `stop ${spec.breakdowns.length}`,
    part,
    clock,
    timeToFailureSeconds: { kind: 'replay', values: up },
    repairSeconds: { kind: 'replay', values: repair },
  }
  return { ...spec, breakdowns: [...spec.breakdowns, source] }
}

export function withBreaks(spec: LineSpec, conveyorDuringBreaks: boolean, ...breaks: readonly (readonly [number, number])[]): LineSpec {
  return { ...spec, conveyorDuringBreaks, breaks: breaks.map(([startSeconds, lengthSeconds]) => ({ startSeconds, lengthSeconds })) }
}

export function until(spec: LineSpec, endSeconds: number, warmupSeconds = 0): LineSpec {
  return { ...spec, window: { warmupSeconds, endSeconds } }
}
