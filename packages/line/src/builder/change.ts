/** A sketch with something changed: records key by key, everything else as a whole. */
import type { CarriersSketch, DriveSketch, LineSketch, OperatorSketch, PutIn, StationSketch, StopSketch, ZoneSketch } from './sketch.ts'

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

const listed = (put: LineSketch['putIn']): readonly PutIn[] => (put === undefined ? [] : Array.isArray(put) ? put : [put as PutIn])

/** A record whose keys are parts or values; a distribution is a value, whose `kind` says so. */
const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && !('kind' in value)

function merged(before: object, change: object): Record<string, unknown> {
  const whole: Record<string, unknown> = { ...before }
  for (const [key, value] of Object.entries(change)) {
    if (value === null) delete whole[key]
    else if (value !== undefined) whole[key] = isRecord(value) && isRecord(whole[key]) ? merged(whole[key], value) : value
  }
  return whole
}
