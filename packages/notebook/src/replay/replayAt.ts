/** A run at one instant. */
import type { StationState } from '@loopwright/line'
import type { CarrierTrack, Hold, Leg, OperatorStretch, Replay } from './replay.ts'

export interface CarrierAt {
  /** zone that it stands in, or leaves; STORE (−1): the store */
  readonly from: number
  /** the same, or the zone that it moves to */
  readonly to: number
  /** index of the path; −1: it stands */
  readonly path: number
  /** 0 at the start of the move, 1 at its end; 1 where it stands */
  readonly way: number
  readonly loaded: boolean
}

/**
 * Where a carrier is.
 *
 * @param seconds  from the start of the run
 */
export function carrierAt({ startZone, legs, loadChanges }: CarrierTrack, seconds: number): CarrierAt {
  const index = lastAt(legs.length, (k) => legs[k]!.start, seconds)
  const loaded = (lastAt(loadChanges.length, (k) => loadChanges[k]!, seconds) + 1) % 2 === 1
  const leg = legs[index]
  if (leg === undefined) return { from: startZone, to: startZone, path: -1, way: 1, loaded }
  if (seconds >= leg.arrive && !leg.open) return { from: leg.to, to: leg.to, path: -1, way: 1, loaded }
  return { from: leg.from, to: leg.to, path: leg.path, way: wayOf(leg, seconds), loaded }
}

/** The share of a move that is done: even in time, but for stops in its midst. */
function wayOf({ start, arrive, frozen }: Leg, seconds: number): number {
  const stood = (until: number): number =>
    frozen.reduce((sum, [from, to]) => sum + Math.max(0, Math.min(to, until) - Math.min(from, until)), 0)
  const whole = arrive - start - stood(arrive)
  return whole <= 0 ? 1 : Math.min(1, Math.max(0, (seconds - start - stood(seconds)) / whole))
}

/** What a station does; `starved` before anything is known. */
export function stationAt(replay: Pick<Replay, 'stations'>, station: number, seconds: number): StationState {
  const own = replay.stations[station]!
  return (
    own[
      Math.max(
        0,
        lastAt(own.length, (k) => own[k]!.from, seconds),
      )
    ]?.state ?? 'starved'
  )
}

/** Stops and breaks that last now. */
export function holdsAt(replay: Pick<Replay, 'holds'>, seconds: number): Hold[] {
  return replay.holds.filter(({ from, to }) => from <= seconds && seconds < to)
}

/** What an operator does, and did before; null: nothing is known. */
export function operatorAt(
  replay: Pick<Replay, 'operators'>,
  operator: number,
  seconds: number,
): { readonly now: OperatorStretch; readonly before: OperatorStretch | null } | null {
  const own = replay.operators[operator]!.stretches
  const at = Math.max(
    0,
    lastAt(own.length, (k) => own[k]!.from, seconds),
  )
  return own[at] === undefined ? null : { now: own[at], before: own[at - 1] ?? null }
}

/** How many of rising instants have come. */
export function countAt(instants: ArrayLike<number>, seconds: number): number {
  return lastAt(instants.length, (k) => instants[k]!, seconds) + 1
}

/** Place of the last of rising values that is not above; −1: none. */
function lastAt(length: number, valueAt: (k: number) => number, value: number): number {
  let [low, high] = [0, length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (valueAt(middle) <= value) low = middle + 1
    else high = middle
  }
  return low - 1
}
