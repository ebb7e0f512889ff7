/** A sketch with something changed: records key by key, everything else as a whole. */
import { isRecord as isKeyed, refuseOther } from './valueForms.ts'
import type {
  CarriersSketch,
  DriveSketch,
  Duty,
  LineSketch,
  OperatorSketch,
  StationSketch,
  StopSketch,
  TaskTimes,
  ZoneSketch,
} from './sketch.ts'
import { listed } from './values.ts'

/** What is different in a record; null: it says nothing of it any more. */
type Changed<T> = { readonly [K in keyof T]?: T[K] | null }
type Parts<T> = Readonly<Record<string, Changed<T> | null>>
type ChangedDuty = Duty | Readonly<Record<string, TaskTimes | null>> | null

/** What is to be different in a station: its tasks one by one. */
export interface StationChange extends Changed<Omit<StationSketch, 'unload' | 'load' | 'work'>> {
  readonly unload?: ChangedDuty
  readonly load?: ChangedDuty
  readonly work?: ChangedDuty
}

/** What is to be different. What has null is taken out; `carriers: 8` changes their number alone; `putIn` and `takeOut` come to those that there are. */
export interface LineChange extends Changed<Omit<LineSketch, 'own' | 'drive' | 'carriers' | 'stations' | 'stops' | 'operators'>> {
  readonly own?: Parts<ZoneSketch> | null
  readonly drive?: Changed<DriveSketch> | null
  readonly carriers?: number | Changed<CarriersSketch>
  readonly stations?: Readonly<Record<string, StationChange | null>> | null
  readonly stops?: Parts<StopSketch> | null
  readonly operators?: Parts<OperatorSketch> | null
}

/**
 * The sketch with the change.
 *
 * @throws LineError  where the change is no record
 * @example withChange({ zones: 4, carriers: { count: 2, length: 1 }, end: 60 }, { carriers: 3 }) // => { zones: 4, carriers: { count: 3, length: 1 }, end: 60 }
 */
export function withChange(sketch: LineSketch, change: LineChange): LineSketch {
  refuseOther('change', change)
  const { carriers, putIn, takeOut, ...rest } = change
  return {
    ...(merged(sketch, rest) as unknown as LineSketch),
    ...(carriers === undefined ? {} : { carriers: withCarriers(sketch.carriers, carriers) as LineSketch['carriers'] }),
    ...added('putIn', listed(sketch.putIn), putIn),
    ...added('takeOut', sketch.takeOut ?? [], takeOut),
  }
}

/** What a list is from now on; null empties it, and what is no list is told of later. */
const added = (key: string, before: readonly unknown[], change: unknown): object =>
  change === undefined ? {} : { [key]: change === null ? [] : [...before, ...listed(change)] }

function withCarriers(before: LineSketch['carriers'], change: number | Changed<CarriersSketch>): unknown {
  const [old, fresh] = [before, change].map((each) => (typeof each === 'number' ? { count: each } : each))
  return isRecord(fresh) ? merged(old, fresh) : fresh
}

const isDistribution = (value: unknown): value is object => isKeyed(value) && typeof value.kind === 'string'

/** A record whose keys are parts or values; a distribution is a value, whose `kind` says so. */
const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => isKeyed(value) && !isDistribution(value)

/** records within records that are changed key by key: stations, one of them, its work; the times of a task are one value, where null means "not this variant" */
const DEPTH = 3

function merged(before: unknown, change: object, depth = 0, of = ''): Record<string, unknown> {
  const whole: Record<string, unknown> = isRecord(before) ? { ...before } : {}
  // products come in one of two ways: the new one takes the place of the old one
  if (of === 'supply' && ('every' in change || 'times' in change)) for (const key of ['every', 'times']) delete whole[key]
  for (const [key, value] of Object.entries(change)) {
    const old = whole[key]
    if (value === null) delete whole[key]
    else if (isDistribution(old) && isRecord(value) && Object.keys(value).every((one) => one in old)) whole[key] = { ...old, ...value }
    else if (value !== undefined) whole[key] = isRecord(value) && depth < DEPTH ? merged(old, value, depth + 1, key) : value
  }
  return whole
}
