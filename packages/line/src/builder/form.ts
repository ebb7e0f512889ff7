/**
 * The form of a sketch, which the compiler checks where there is one, and nobody in a notebook: which keys there are, records where records stand, lists where lists do,
 * words of those that there are. What the values mean is looked at where they are read.
 */
import { distributionKinds } from '@loopwright/stats'
import { nearest } from '../check/nearest.ts'
import { sentences as say } from '../check/sentences.ts'
import { ZONES_MAX } from './zones.ts'
import type { Report } from './report.ts'
import {
  either,
  fine,
  flag,
  type Form,
  isNumber,
  isRecord,
  isText,
  list,
  named,
  number,
  orElse,
  record,
  ref,
  text,
  word,
  wrong,
} from './valueForms.ts'
import type {
  CarriersSketch,
  DriveSketch,
  LineSketch,
  OperatorSketch,
  PathSketch,
  ProductsSketch,
  PutIn,
  StationSketch,
  StopSketch,
  SupplySketch,
  ZoneSketch,
} from './sketch.ts'

const zoneCount: Form = (report, path, value) => {
  if (!Number.isInteger(value)) return report.close(path, say.notWhole(String(value)))
  return (value as number) <= ZONES_MAX ? value : report.close(path, say.tooManyZones(String(value), ZONES_MAX))
}

/** Seconds, or a distribution with the keys of its kind and no others; what they are worth is looked at where it is read. */
const time: Form = (report, path, value) => {
  if (isNumber(value)) return value
  if (!isRecord(value)) return wrong(report, path, 'seconds as a number, or a distribution', value)
  const { kind, ...rest } = value
  if (kind === undefined) return report.close(path, say.missing('kind', `one of ${KINDS.map((known) => known.kind).join(', ')}`))
  const fields = KINDS.find((known) => known.kind === kind)?.fields
  if (fields === undefined) return value
  const keys = ['kind', ...Object.keys(fields)]
  for (const [key, part] of Object.entries(rest)) {
    if (!keys.includes(key)) report.add(`${path}.${key}`, say.unknownKey(key, nearest(key, keys), keys))
    else if (fields[key]![0] === 'distribution' && isRecord(part)) time(report, `${path}.${key}`, part)
  }
  return value
}
const KINDS = distributionKinds()
const PARAMETERS = new Set(KINDS.flatMap(({ fields }) => Object.keys(fields)))

/** A distribution, by its kind; or one that lacks it: a mean or two ends, and nothing but what distributions have. */
function isDistribution(value: unknown): boolean {
  if (!isRecord(value) || typeof value.kind === 'string') return isRecord(value)
  const keys = Object.keys(value)
  return (
    keys.length > 1 && keys.every((key) => PARAMETERS.has(key)) && (keys.includes('mean') || (keys.includes('min') && keys.includes('max')))
  )
}

/** For all variants; or one for each, where null means that it has no such task. */
const timeOrNull: Form = (report, path, value) => (value === null ? value : (time(report, path, value) ?? 1))
const timesByName: Form = either(Array.isArray, list(timeOrNull), named(timeOrNull))
const taskTimes: Form = orElse(
  1,
  either((value) => !Array.isArray(value) && (!isRecord(value) || isDistribution(value)), time, timesByName),
)
const duty: Form = either((value) => !isRecord(value) || isDistribution(value), time, named(taskTimes))

const SUPPLY = either(isText, fine, record<Exclude<SupplySketch, string>>({ name: text, every: time, times: list(number), queue: number }))
const ZONE = record<ZoneSketch>({
  name: text,
  length: number,
  sensorBeforeStop: number,
  release: word('single', 'train'),
  speed: number,
  acceleration: number,
  transfer: record<NonNullable<ZoneSketch['transfer']>>(
    { lift: number, lower: number, enterOnlyIfExitClear: flag },
    { lift: ['seconds', 0], lower: ['seconds', 0] },
  ),
  divert: word('first', 'alternate', 'free'),
  merge: either(
    isRecord,
    record<Exclude<NonNullable<ZoneSketch['merge']>, string>>({ priority: list(ref) }, { priority: ['a list of zones', []] }),
    word('waiting', 'alternate'),
  ),
})
const PUT_IN = record<PutIn>({ before: text, after: text, zones: number, length: number })
const PATH = record<PathSketch>(
  {
    from: ref,
    to: ref,
    distance: number,
    speed: number,
    acceleration: number,
    across: flag,
    fromPosition: word('low', 'high'),
    toPosition: word('low', 'high'),
    move: time,
    clear: either(isText, word('move'), time),
    takes: record<NonNullable<PathSketch['takes']>>({
      variants: list(ref),
      load: word('empty', 'loaded'),
      rejected: flag,
      forStation: ref,
    }),
    push: ref,
    pull: ref,
  },
  { from: ['the name of a zone', ''] },
)
const DRIVE = record<DriveSketch>({
  speed: number,
  acceleration: number,
  reaction: number,
  sensorBeforeStop: number,
  release: word('single', 'train'),
  stagger: number,
})
const CARRIERS = record<CarriersSketch>(
  {
    count: number,
    length: number,
    width: number,
    start: either(isText, word('spread', 'packed', 'store'), list(ref)),
  },
  {},
  'how many there are, or a set of keys',
)
const STATION = record<StationSketch>(
  {
    zone: ref,
    title: text,
    unload: duty,
    load: duty,
    work: duty,
    release: time,
    automatic: flag,
    operatorsNeeded: number,
    worksInBreaks: flag,
    accepts: word('good', 'rejected', 'all'),
    supply: SUPPLY,
    receiver: record<NonNullable<StationSketch['receiver']>>({ cycle: time, queue: number }, { cycle: ['seconds', 1] }),
    safetyStop: record<NonNullable<StationSketch['safetyStop']>>(
      { chance: number, reset: time },
      { chance: ['0 … 1', 0], reset: ['seconds', 1] },
    ),
  },
  { zone: ['the name of a zone', ''] },
)
const STOP = record<StopSketch>(
  {
    at: either(isText, text, list(text, 'the name of a part, or a list of them')),
    after: time,
    lasts: time,
    clock: word('operating', 'calendar'),
  },
  { at: ['the name of a part', ''], after: ['seconds', 1], lasts: ['seconds', 1] },
)
const MIX = record<Exclude<NonNullable<ProductsSketch['mix']>, string>>(
  { kind: word('pattern', 'list'), sequence: list(ref) },
  { kind: ['pattern or list', 'list'], sequence: ['a list of variants', []] },
)

const LINE = record<LineSketch>(
  {
    zones: either(
      Array.isArray,
      list(either(isText, text, ZONE)),
      either(isNumber, zoneCount, list(ZONE, 'how many there are, or a list of them')),
    ),
    zoneLength: number,
    own: named(ZONE),
    beside: list(either(isText, text, ZONE)),
    putIn: either(Array.isArray, list(PUT_IN), PUT_IN),
    takeOut: list(text),
    paths: list(either(isText, text, PATH)),
    drive: DRIVE,
    carriers: either(isNumber, number, CARRIERS),
    stations: named(STATION),
    tasks: list(text),
    products: record<ProductsSketch>({
      variants: either(Array.isArray, list(text), named(orElse(1, number))),
      mix: either(isText, word('random', 'levelled'), MIX),
    }),
    supply: SUPPLY,
    inspections: named(number),
    rework: named(word('again', 'only')),
    sections: named(orElse([], list(ref))),
    operators: named(record<OperatorSketch>({ stations: list(ref), start: ref }, { stations: ['a list of stations', []] })),
    walks: list(
      record<NonNullable<LineSketch['walks']>[number]>(
        { between: list(ref), lasts: number },
        { between: ['two stations', []], lasts: ['seconds', 0] },
      ),
    ),
    stops: named(STOP),
    repairCrews: number,
    breaks: list(
      record<NonNullable<LineSketch['breaks']>[number]>({ after: number, lasts: number }, { after: ['seconds', 0], lasts: ['seconds', 0] }),
    ),
    conveyorDuringBreaks: flag,
    warmup: number,
    end: number,
  },
  { zones: ['how many there are', undefined], carriers: ['how many there are', 1], end: ['seconds', 1] },
)

/**
 * Reports what has not the form of a sketch, where it stands.
 *
 * @returns  the sketch as far as it can be read; null where there is nothing to read, or no zones that all else stands in
 */
export function checkForm(report: Report, sketch: LineSketch): LineSketch | null {
  if (!isRecord(sketch)) {
    wrong(report, 'line', 'a set of keys', sketch)
    return null
  }
  const read = LINE(report, '', sketch) as LineSketch
  return read.zones === undefined ? null : read
}
