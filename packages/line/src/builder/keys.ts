/** Words of a sketch that nobody reads: a slip that the compiler finds, where there is one. */
import { nearest } from '../check/nearest.ts'
import { sentences as say } from '../check/sentences.ts'
import type { Report } from './report.ts'
import type {
  CarriersSketch,
  DriveSketch,
  LineSketch,
  OperatorSketch,
  PathSketch,
  StationSketch,
  StopSketch,
  ZoneSketch,
} from './sketch.ts'

/** Every key of a record: the compiler asks for each, and for no other. */
const keysOf = <T>(keys: Readonly<Record<keyof T, true>>): readonly string[] => Object.keys(keys)

const LINE = keysOf<LineSketch>({
  zones: true,
  zoneLength: true,
  own: true,
  beside: true,
  putIn: true,
  takeOut: true,
  paths: true,
  drive: true,
  carriers: true,
  stations: true,
  tasks: true,
  products: true,
  supply: true,
  inspections: true,
  rework: true,
  sections: true,
  operators: true,
  walks: true,
  stops: true,
  repairCrews: true,
  breaks: true,
  conveyorDuringBreaks: true,
  warmup: true,
  end: true,
})
const ZONE = keysOf<ZoneSketch>({
  name: true,
  length: true,
  sensorBeforeStop: true,
  release: true,
  speed: true,
  acceleration: true,
  transfer: true,
  divert: true,
  merge: true,
})
const PATH = keysOf<PathSketch>({
  from: true,
  to: true,
  distance: true,
  speed: true,
  acceleration: true,
  across: true,
  fromPosition: true,
  toPosition: true,
  move: true,
  clear: true,
  takes: true,
  push: true,
  pull: true,
})
const DRIVE = keysOf<DriveSketch>({ speed: true, acceleration: true, reaction: true, sensorBeforeStop: true, release: true, stagger: true })
const CARRIERS = keysOf<CarriersSketch>({ count: true, length: true, width: true, start: true })
const STATION = keysOf<StationSketch>({
  zone: true,
  title: true,
  unload: true,
  load: true,
  work: true,
  release: true,
  automatic: true,
  operatorsNeeded: true,
  worksInBreaks: true,
  accepts: true,
  supply: true,
  receiver: true,
  safetyStop: true,
})
const OPERATOR = keysOf<OperatorSketch>({ stations: true, start: true })
const STOP = keysOf<StopSketch>({ at: true, after: true, lasts: true, clock: true })

/** Reports each key that no line has; what is undefined is as if it were not there. */
export function checkKeys(report: Report, sketch: LineSketch): void {
  const check = (path: string, given: unknown, known: readonly string[]): void => {
    if (given === null || typeof given !== 'object') return
    for (const [key, value] of Object.entries(given)) {
      if (value === undefined || known.includes(key)) continue
      report.add(path === '' ? key : `${path}.${key}`, say.unknownKey(key, nearest(key, known), known))
    }
  }
  const named = (path: string, given: Readonly<Record<string, unknown>> | undefined, known: readonly string[]): void => {
    for (const [name, one] of Object.entries(given ?? {})) check(`${path}.${name}`, one, known)
  }
  const listed = (path: string, given: unknown, known: readonly string[]): void => {
    if (Array.isArray(given)) for (const [index, one] of given.entries()) check(`${path}[${index}]`, one, known)
  }
  check('', sketch, LINE)
  check('drive', sketch.drive, DRIVE)
  check('carriers', sketch.carriers, CARRIERS)
  listed('zones', sketch.zones, ZONE)
  listed('beside', sketch.beside, ZONE)
  listed('paths', sketch.paths, PATH)
  named('own', sketch.own, ZONE)
  named('stations', sketch.stations, STATION)
  named('operators', sketch.operators, OPERATOR)
  named('stops', sketch.stops, STOP)
}
