/**
 * The form of a sketch, which the compiler checks where there is one, and nobody in a notebook: which keys there are, records where records stand, lists where lists do,
 * words of those that there are. What the values mean is looked at where they are read.
 */
import { nearest } from '../check/nearest.ts'
import { sentences as say } from '../check/sentences.ts'
import type { Report } from './report.ts'
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

/** Looks at one value, and says whether it can be read any further. */
type Form = (report: Report, path: string, value: unknown) => boolean

/** A form for every key of a record: the compiler asks for each, and for no other. */
type Fields<T> = Readonly<Record<keyof T, Form>>

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function found(value: unknown): string {
  if (value === null || value === undefined) return 'nothing'
  if (typeof value === 'string') return `the text "${value.slice(0, 60)}"`
  if (typeof value === 'number') return `the number ${value}`
  if (typeof value === 'boolean') return `"${value}"`
  return Array.isArray(value) ? 'a list' : typeof value === 'object' ? 'a set of keys' : `a ${typeof value}`
}

function wrong(report: Report, path: string, expected: string, value: unknown): false {
  report.add(path, say.wrongType(expected, found(value)))
  return false
}

const all = (looked: readonly boolean[]): boolean => looked.every(Boolean)

/** A number is looked at where it is read: whether it is one, and within what range. */
const number: Form = (report, path, value) =>
  typeof value === 'number' || typeof value === 'string' || wrong(report, path, 'a number', value)
const text: Form = (report, path, value) => typeof value === 'string' || wrong(report, path, 'a text', value)
const flag: Form = (report, path, value) => typeof value === 'boolean' || wrong(report, path, 'true or false', value)
const ref: Form = (report, path, value) =>
  typeof value === 'string' || typeof value === 'number' || wrong(report, path, 'a name, or a place from 0', value)
const time: Form = (report, path, value) =>
  typeof value === 'number' || isRecord(value) || wrong(report, path, 'seconds as a number, or a distribution', value)
const count: Form = (report, path, value) => {
  if (Number.isInteger(value)) return true
  report.add(path, say.notWhole(String(value)))
  return false
}

const word =
  (...known: readonly string[]): Form =>
  (report, path, value) => {
    if (typeof value !== 'string') return wrong(report, path, `one of ${known.join(', ')}`, value)
    if (!known.includes(value)) report.add(path, say.notAChoice(value, nearest(value, known), known))
    return true
  }

const list =
  (form: Form, what = 'a list'): Form =>
  (report, path, value) =>
    Array.isArray(value) ? all(value.map((one, index) => form(report, `${path}[${index}]`, one))) : wrong(report, path, what, value)

/** Parts by name. */
const named =
  (form: Form): Form =>
  (report, path, value) =>
    isRecord(value)
      ? all(Object.entries(value).map(([name, one]) => one === undefined || form(report, `${path}.${name}`, one)))
      : wrong(report, path, 'a set of keys, one for each name', value)

/** What is undefined is as if it were not there. `needed`: keys that must be, with what is to stand there. */
const record =
  <T>(fields: Fields<T>, needed: Partial<Record<keyof T & string, string>> = {}): Form =>
  (report, path, value) => {
    if (!isRecord(value)) return wrong(report, path, 'a set of keys', value)
    const at = (key: string): string => (path === '' ? key : `${path}.${key}`)
    const known = Object.keys(fields)
    const looked = Object.entries(value).map(([key, one]) => {
      if (one === undefined) return true
      if (Object.hasOwn(fields, key)) return fields[key as keyof T](report, at(key), one)
      report.add(at(key), say.unknownKey(key, nearest(key, known), known))
      return true
    })
    const there = Object.entries(needed).map(([key, expected]) => {
      if (value[key] !== undefined) return true
      report.add(at(key), say.missing(key, expected as string))
      return false
    })
    return all([...looked, ...there])
  }

const either =
  (is: (value: unknown) => boolean, form: Form, other: Form): Form =>
  (report, path, value) =>
    is(value) ? form(report, path, value) : other(report, path, value)

const isText = (value: unknown): boolean => typeof value === 'string'
const isNumber = (value: unknown): boolean => typeof value === 'number'
const fine: Form = () => true

/** For all variants; or one for each, where null means that it has no such task. */
const timeOrNull: Form = (report, path, value) => value === null || time(report, path, value)
const taskTimes: Form = either(Array.isArray, list(timeOrNull), (report, path, value) =>
  isRecord(value) && typeof value.kind !== 'string' ? named(timeOrNull)(report, path, value) : time(report, path, value),
)
const duty: Form = (report, path, value) =>
  isRecord(value) && typeof value.kind !== 'string' ? named(taskTimes)(report, path, value) : time(report, path, value)

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
    { lift: 'seconds', lower: 'seconds' },
  ),
  divert: word('first', 'alternate', 'free'),
  merge: either(
    isRecord,
    record<Exclude<NonNullable<ZoneSketch['merge']>, string>>({ priority: list(ref) }, { priority: 'a list of zones' }),
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
  { from: 'the name of a zone' },
)
const DRIVE = record<DriveSketch>({
  speed: number,
  acceleration: number,
  reaction: number,
  sensorBeforeStop: number,
  release: word('single', 'train'),
  stagger: number,
})
const CARRIERS = record<CarriersSketch>({
  count: number,
  length: number,
  width: number,
  start: either(isText, word('spread', 'packed', 'store'), list(ref)),
})
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
    receiver: record<NonNullable<StationSketch['receiver']>>({ cycle: time, queue: number }, { cycle: 'seconds' }),
    safetyStop: record<NonNullable<StationSketch['safetyStop']>>({ chance: number, reset: time }, { chance: '0 … 1', reset: 'seconds' }),
  },
  { zone: 'the name of a zone' },
)
const STOP = record<StopSketch>(
  {
    at: either(isText, text, list(text, 'the name of a part, or a list of them')),
    after: time,
    lasts: time,
    clock: word('operating', 'calendar'),
  },
  { at: 'the name of a part', after: 'seconds', lasts: 'seconds' },
)
const MIX = record<Exclude<NonNullable<ProductsSketch['mix']>, string>>(
  { kind: word('pattern', 'list'), sequence: list(ref) },
  { kind: 'pattern or list', sequence: 'a list of variants' },
)

const LINE = record<LineSketch>(
  {
    zones: either(
      Array.isArray,
      list(either(isText, text, ZONE)),
      either(isNumber, count, list(ZONE, 'how many there are, or a list of them')),
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
      variants: either(Array.isArray, list(text), named(number)),
      mix: either(isText, word('random', 'levelled'), MIX),
    }),
    supply: SUPPLY,
    inspections: named(number),
    rework: named(word('again', 'only')),
    sections: named(list(ref)),
    operators: named(record<OperatorSketch>({ stations: list(ref), start: ref }, { stations: 'a list of stations' })),
    walks: list(
      record<NonNullable<LineSketch['walks']>[number]>(
        { between: list(ref), lasts: number },
        { between: 'two stations', lasts: 'seconds' },
      ),
    ),
    stops: named(STOP),
    repairCrews: number,
    breaks: list(
      record<NonNullable<LineSketch['breaks']>[number]>({ after: number, lasts: number }, { after: 'seconds', lasts: 'seconds' }),
    ),
    conveyorDuringBreaks: flag,
    warmup: number,
    end: number,
  },
  { zones: 'how many there are', carriers: 'how many there are', end: 'seconds' },
)

/** Reports what has not the form of a sketch, where it stands. False: what comes of it cannot be read. */
export const checkForm = (report: Report, sketch: LineSketch): boolean =>
  isRecord(sketch) ? LINE(report, '', sketch) : wrong(report, 'line', 'a set of keys', sketch)
