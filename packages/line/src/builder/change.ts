/** A sketch with something changed: records key by key, everything else as a whole. */
import type { CarriersSketch, DriveSketch, LineSketch, OperatorSketch, StationSketch, StopSketch, ZoneSketch } from './sketch.ts'
import { listed } from './values.ts'

type Parts<T> = Readonly<Record<string, Partial<T> | null>>

/** What is to be different. A part with null is taken out; `carriers: 8` changes their number alone; `putIn` and `takeOut` come to those that there are. */
export interface LineChange extends Partial<Omit<LineSketch, 'own' | 'drive' | 'carriers' | 'stations' | 'stops' | 'operators'>> {
  readonly own?: Parts<ZoneSketch>
  readonly drive?: Partial<DriveSketch>
  readonly carriers?: number | Partial<CarriersSketch>
  readonly stations?: Parts<StationSketch>
  readonly stops?: Parts<StopSketch>
  readonly operators?: Parts<OperatorSketch>
}

/**
 * The sketch with the change.
 *
 * @example withChange({ zones: 4, carriers: { count: 2, length: 1 }, end: 60 }, { carriers: 3 }) // => { zones: 4, carriers: { count: 3, length: 1 }, end: 60 }
 */
export function withChange(sketch: LineSketch, change: LineChange): LineSketch {
  const { carriers, putIn, takeOut, ...rest } = change
  return {
    ...(merged(sketch, rest) as unknown as LineSketch),
    ...(carriers === undefined ? {} : { carriers: withCarriers(sketch.carriers, carriers) }),
    ...(putIn === undefined ? {} : { putIn: [...listed(sketch.putIn), ...listed(putIn)] }),
    ...(takeOut === undefined ? {} : { takeOut: [...(sketch.takeOut ?? []), ...takeOut] }),
  }
}

function withCarriers(before: LineSketch['carriers'], change: number | Partial<CarriersSketch>): LineSketch['carriers'] {
  const [old, fresh] = [before, change].map((each) => (typeof each === 'number' ? { count: each } : each))
  return { ...old, ...fresh }
}

/** A record whose keys are parts or values; a distribution is a value, whose `kind` says so. */
const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && typeof (value as { readonly kind?: unknown }).kind !== 'string'

/** records within records that are changed key by key: stations, one of them, its work; the times of a task are one value, where null means "not this variant" */
const DEPTH = 3

function merged(before: unknown, change: object, depth = 0): Record<string, unknown> {
  const whole: Record<string, unknown> = isRecord(before) ? { ...before } : {}
  for (const [key, value] of Object.entries(change)) {
    if (value === null) delete whole[key]
    else if (value !== undefined) whole[key] = isRecord(value) && depth < DEPTH ? merged(whole[key], value, depth + 1) : value
  }
  return whole
}
