/** Loops whose output is exactly known, from the files beside this one to a LineSpec. */
import { readdirSync, readFileSync } from 'node:fs'
import type { LineSpec } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import { type StationWish, type StopWish, smallLoop, type Time } from '../../helpers/smallLoop.ts'

/** `values` or `weights`, `mean`, `cv` … as the kind needs them */
export type ExactTime = number | ({ readonly dist: string } & Readonly<Record<string, unknown>>)

export interface ExactCheck {
  readonly family: string
  readonly id: string
  readonly model: {
    readonly zones: number
    readonly carriers: number
    readonly start: 'spread' | readonly number[]
    /** its station swaps the product of every carrier */
    readonly swapZone: number
    readonly tasks: readonly { readonly zone: number; readonly time: ExactTime }[]
    readonly moveSeconds: ExactTime | readonly ExactTime[]
    readonly clearSeconds: 'move' | ExactTime | readonly ExactTime[]
    readonly breakdowns?: readonly {
      readonly zone: number
      readonly clock: 'operating' | 'calendar'
      readonly timeToFailure: ExactTime
      readonly repair: ExactTime
    }[]
  }
  readonly quantity: string
  readonly value: number
  /** value = scale × what the loop gives */
  readonly scale?: number
  readonly tolerance: {
    readonly kind: string
    readonly warmupSeconds: number
    readonly windowSeconds: number
    readonly countWithin: number
  }
  readonly source: string
  readonly note?: string
}

/** All checks of the files beside this one. */
/** @param folder  of files like those beside this one; default: these */
export function exactChecks(folder = import.meta.dirname): ExactCheck[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .flatMap((name) => {
      const { family, checks } = JSON.parse(readFileSync(`${folder}/${name}`, 'utf8')) as {
        family: string
        checks: ExactCheck[]
      }
      return checks.map((check) => ({ ...check, family }))
    })
}

function timeOf(time: ExactTime): Time {
  if (typeof time === 'number') return time
  const { dist, ...rest } = time
  const { p, values } = time as unknown as { readonly p: number; readonly values: readonly number[] }
  switch (dist) {
    case 'geometric':
      return geometric(p)
    case 'empirical':
      return { kind: 'empirical', values, interpolate: false }
    default:
      return { kind: dist, ...rest } as Distribution
  }
}

/** P(k) = p·(1 − p)^(k − 1), k = 1, 2, … as a list, cut where less than 1e-14 is left. */
export function geometric(p: number): Distribution {
  const values: number[] = []
  const weights: number[] = []
  for (let k = 1, left = 1; left > 1e-14; k++, left *= 1 - p) {
    values.push(k)
    weights.push(p * left)
  }
  return { kind: 'discrete', values, weights }
}

/**
 * The loop of a check. The literature works on every carrier at every visit; here the station in the swap zone unloads and loads in no time,
 * so that every carrier leaves it with a new product, and each later station works on it once, with draws of its own.
 */
export function exactLoop({ model }: ExactCheck, warmup: number, window: number): LineSpec {
  const stations: StationWish[] = [...new Set([model.swapZone, ...model.tasks.map((task) => task.zone)])].map((zone) => {
    const task = model.tasks.find((t) => t.zone === zone)
    return {
      at: zone,
      ...(zone === model.swapZone ? { unload: true as const, load: true as const } : {}),
      ...(task === undefined ? {} : { work: timeOf(task.time) }),
    }
  })
  const isList = <T>(x: T | readonly T[]): x is readonly T[] => Array.isArray(x)
  const stops: StopWish[] = (model.breakdowns ?? []).map(({ zone, clock, timeToFailure, repair }) => ({
    name: `S${zone}`,
    on: { kind: 'station', index: stations.findIndex((station) => station.at === zone) },
    clock,
    after: timeOf(timeToFailure) as Distribution,
    repair: timeOf(repair) as Distribution,
  }))
  return smallLoop({
    zones: model.zones,
    start: model.start === 'spread' ? model.carriers : model.start,
    move: isList(model.moveSeconds) ? model.moveSeconds.map(timeOf) : timeOf(model.moveSeconds),
    clear:
      model.clearSeconds === 'move' ? 'move' : isList(model.clearSeconds) ? model.clearSeconds.map(timeOf) : timeOf(model.clearSeconds),
    stations,
    stops,
    warmup,
    until: warmup + window,
  })
}
