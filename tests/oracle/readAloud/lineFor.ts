/** Complete LineSpecs for tests, from the little that a test wants to say. */

import type { BreakdownPart, BreakdownSpec, LineSpec, PathSpec, StationSpec, TaskSpec, ZoneSpec } from '@loopwright/line'
import { PLAIN_LINE, PLAIN_PATH, PLAIN_STATION, PLAIN_ZONE, wholeLine } from '@loopwright/line'
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
  const zone = (index: number): ZoneSpec => ({
    ...PLAIN_ZONE,
    name: `Z${index}`,
    lengthMetres: null,
    sensorBeforeStopMetres: 0,
    release: 'single',
    transfer: null,
  })
  const path = (index: number): PathSpec => ({
    ...PLAIN_PATH,
    from: index,
    to: (index + 1) % zones,
    distanceMetres: null,
    speedMetresPerSecond: null,
    accelerationMetresPerSecondSquared: null,
    across: false,
    fromPosition: 'low',
    toPosition: 'low',
    moveSeconds: timeAt(move, index),
    clearSeconds: clear === 'move' ? 'move' : timeAt(clear, index),
  })
  const indices = Array.from({ length: zones }, (_, index) => index)
  return {
    ...PLAIN_LINE,
    sections: wholeLine(zones),
    zones: indices.map(zone),
    paths: indices.map(path),
    carriers: { count: start.length, lengthMetres: null, widthMetres: null, start },
    reactionSeconds: 0,
    staggerSeconds: 0,
    stations: [],
    tasks: [],
    variants: ['one'],
    mix: { kind: 'pattern', sequence: [0] },
    breakdowns: [],
    breaks: [],
    conveyorDuringBreaks: true,
    window: { warmupSeconds: 0, endSeconds: 100 },
  }
}

/**
 * A closed loop with drives: every distance 2 m, v = 1 m/s, a = 0.5 m/s², so x = 1 m, ramp = 1 s:
 * M(speed, speed) = 2, M(rest, speed) = M(speed, rest) = 3, M(rest, rest) = 4 s;
 * carrier 1.5 m, sensor at the stop point, ε = 0.25 s: C(speed) = 1.75, C(rest) = 2.75 s. Stagger 0.5 s.
 */
export function drivenLoop(zones: number, start: readonly number[]): LineSpec {
  const given = givenLoop(zones, start, 0, 0)
  return {
    ...given,
    zones: given.zones.map((zone) => ({ ...zone, lengthMetres: 2 })),
    paths: given.paths.map((path) => ({
      ...path,
      distanceMetres: 2,
      speedMetresPerSecond: 1,
      accelerationMetresPerSecondSquared: 0.5,
      moveSeconds: null,
      clearSeconds: null,
    })),
    carriers: { count: start.length, lengthMetres: 1.5, widthMetres: 1.5, start },
    reactionSeconds: 0.25,
    staggerSeconds: 0.5,
  }
}

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
