/**
 * What a run reports, counted again from its trace: every interval between two instants is looked at, for every zone, station and carrier.
 * Nothing of the engine is used but the words of the trace; the states are those of MODEL.md §11.
 */
import { type LineSpec, type RunResult, type Trace, TRACE_KINDS, type TraceKind } from '@loopwright/line'
import { grid, holdsOf, type Holds } from './holds.ts'
import { doneEvents, startOf } from './stays.ts'

type ZoneWord = 'free' | 'claimed' | 'occupied' | 'vacating'

interface CarrierNow {
  zone: number
  isMoving: boolean
  isWorkedOn: boolean
  isChanging: boolean
  /** nothing is left to do here; null: the trace ends before it tells */
  isDone: boolean | null
  serial: number | null
  lapStart: number | null
}

export interface Recount {
  readonly stations: { seconds: number[]; unknown: number; longestBlock: number; block: number; cycles: number; causes: CauseSeconds }[]
  readonly zones: { seconds: number[]; unknown: number; occupied: number; movesOut: number; causes: CauseSeconds }[]
  readonly carriers: { seconds: number[]; laps: number }[]
  readonly breakdowns: { count: number; seconds: number }[]
  readonly breaks: { count: number; seconds: number }
  readonly laps: number[]
  readonly timesInLine: number[]
  readonly outputs: number[]
  loads: number
  /** ∫ products in line dt over the window, interval by interval */
  productSeconds: number
  /** the same, product by product: from its load or the start of the window to its unload or the end */
  productSecondsByProduct: number
  /** largest difference of the moves out of two zones since time 0, at any instant */
  movesApartMax: number
  /** loads less outputs since time 0, at any instant */
  leastInLine: number
  mostInLine: number
}

/** Seconds by cause, while the part was `stopped` or on a `break`: where causes overlap each counts the whole time. */
export type CauseSeconds = Map<string, number>

const zeros = (length: number): number[] => new Array<number>(length).fill(0)

/** @param trace  of the run, or of one that goes on for longer: then it tells how the stays at the end of the window went on */
export function recount(spec: LineSpec, trace: Trace, end: RunResult['end']): Recount {
  const warmup = grid(spec.window.warmupSeconds)
  const last = grid(spec.window.endSeconds)
  const zones = spec.zones.length
  const next = (zone: number): number => (zone + 1) % zones
  const isExitClear = (zone: number): boolean => spec.zones[zone]!.transfer?.enterOnlyIfExitClear === true
  const changesBack = (zone: number): boolean =>
    spec.zones[zone]!.transfer !== null && spec.paths[zone]!.fromPosition !== spec.paths[(zone + zones - 1) % zones]!.toPosition
  const stationIn = spec.zones.map((_, zone) => spec.stations.findIndex((station) => station.zone === zone))
  const lapZone = spec.stations.find((station) => station.unload !== null)?.zone ?? 0
  const products = spec.mix.kind === 'list' ? spec.mix.sequence.length : Number.POSITIVE_INFINITY

  const state: ZoneWord[] = spec.zones.map(() => 'free')
  const carriers: CarrierNow[] = startOf(spec).map((zone) => {
    state[zone] = 'occupied'
    return { zone, isMoving: false, isWorkedOn: false, isChanging: false, isDone: true, serial: null, lapStart: null }
  })
  const servedAt = spec.stations.map(() => false)
  const holds: Holds = holdsOf(spec)
  const doneAt = doneEvents(spec, trace, end)
  const loadedAt = new Map<number, number>()
  const movesOut = zeros(zones)
  let loads = 0
  let unloads = 0
  const told: Recount = {
    stations: spec.stations.map(() => ({ seconds: zeros(10), unknown: 0, longestBlock: 0, block: 0, cycles: 0, causes: new Map() })),
    zones: spec.zones.map(() => ({ seconds: zeros(7), unknown: 0, occupied: 0, movesOut: 0, causes: new Map() })),
    carriers: carriers.map(() => ({ seconds: zeros(4), laps: 0 })),
    breakdowns: spec.breakdowns.map(() => ({ count: 0, seconds: 0 })),
    breaks: { count: 0, seconds: 0 },
    laps: [],
    timesInLine: [],
    outputs: [],
    loads: 0,
    productSeconds: 0,
    productSecondsByProduct: 0,
    movesApartMax: 0,
    leastInLine: 0,
    mostInLine: 0,
  }

  const carrierIn = (zone: number): CarrierNow | undefined => carriers.find((carrier) => carrier.zone === zone)
  const waitsForProduct = (carrier: CarrierNow): boolean => {
    const station = stationIn[carrier.zone]!
    return carrier.isDone !== true && station >= 0 && spec.stations[station]!.load !== null && carrier.serial === null && loads >= products
  }

  function stationWord(index: number): string | null {
    const zone = spec.stations[index]!.zone
    const carrier = carrierIn(zone)
    const works = carrier !== undefined && !carrier.isMoving && carrier.isWorkedOn
    if (holds.isBreak && !spec.stations[index]!.worksInBreaks) return 'break'
    if (holds.station(index) || (holds.zone(zone) && !works)) return 'stopped'
    if (works) return 'working'
    if (state[zone] === 'free') return 'starved'
    if (state[zone] !== 'occupied' || carrier!.isChanging) return 'exchanging'
    if (carrier!.isDone === true) return 'blocked'
    return waitsForProduct(carrier!) ? 'waiting for product' : null
  }
  function zoneWord(zone: number): string | null {
    if (holds.zone(zone)) return 'stopped'
    if (state[zone] !== 'occupied') return state[zone]!
    const carrier = carrierIn(zone)!
    if (carrier.isWorkedOn) return 'working'
    if (carrier.isDone === null) return waitsForProduct(carrier) ? 'other' : null
    return carrier.isDone ? 'blocked' : 'other'
  }
  const carrierPlace = (carrier: CarrierNow): number => (carrier.isMoving ? 0 : carrier.isWorkedOn ? 1 : carrier.serial !== null ? 2 : 3)

  /** Adds what lasts from `from` to `to`, as far as it lies in the window. */
  function lasts(from: number, to: number): void {
    const seconds = Math.min(to, last) - Math.max(from, warmup)
    if (seconds <= 0) return
    told.stations.forEach((station, index) => {
      const word = stationWord(index)
      if (word === null) station.unknown += seconds
      else station.seconds[STATIONS.indexOf(word)]! += seconds
      station.block = word === 'blocked' ? station.block + seconds : 0
      station.longestBlock = Math.max(station.longestBlock, station.block)
      if (word !== 'stopped' && word !== 'break') return
      // held work does not run, so a hold of the zone stops the station beside its own
      addCauses(station.causes, holds.causes(index, spec.stations[index]!.zone), seconds)
    })
    told.zones.forEach((zone, index) => {
      const word = zoneWord(index)
      if (word === null) zone.unknown += seconds
      else zone.seconds[ZONES.indexOf(word)]! += seconds
      if (carrierIn(index) !== undefined) zone.occupied += seconds
      if (word === 'stopped') addCauses(zone.causes, holds.causes(null, index), seconds)
    })
    carriers.forEach((carrier, index) => {
      told.carriers[index]!.seconds[carrierPlace(carrier)]! += seconds
      if (carrier.serial !== null) told.productSeconds += seconds
    })
    told.breakdowns.forEach((source, index) => {
      if (holds.isDown(index)) source.seconds += seconds
    })
    if (holds.isBreak) told.breaks.seconds += seconds
  }

  function happens(k: number, at: number): void {
    const kind: TraceKind = TRACE_KINDS[trace.kinds[k]!]!
    const place = trace.places[k]!
    const carrier = carriers[trace.carriers[k]!]
    const counts = at > warmup && at <= last
    switch (kind) {
      case 'move start': {
        state[place] = 'vacating'
        for (let zone = next(place); state[zone] === 'free'; zone = next(zone)) {
          state[zone] = 'claimed'
          if (!isExitClear(zone)) break
        }
        Object.assign(carrier!, { zone: next(place), isMoving: true, isDone: false })
        movesOut[place]!++
        if (counts) told.zones[place]!.movesOut++
        const station = stationIn[place]!
        if (station >= 0) {
          if (servedAt[station] && counts) told.stations[station]!.cycles++
          servedAt[station] = false
        }
        if (place === lapZone) {
          if (carrier!.lapStart !== null && counts) {
            told.laps.push(at - carrier!.lapStart)
            told.carriers[trace.carriers[k]!]!.laps++
          }
          carrier!.lapStart = at
        }
        break
      }
      case 'clear':
        if (!changesBack(place)) state[place] = 'free'
        break
      case 'rest':
        state[place] = 'occupied'
        carrier!.isMoving = false
        break
      case 'duty start':
      case 'release start':
        carrier!.isWorkedOn = true
        if (kind === 'duty start') servedAt[place] = true
        break
      case 'duty end':
      case 'release end':
        carrier!.isWorkedOn = false
        break
      case 'change start':
        if (trace.details[k] === 0) carrier!.isChanging = true
        break
      case 'change end':
        if (trace.details[k] === 0) carrier!.isChanging = false
        else state[place] = 'free'
        break
      case 'load':
        carrier!.serial = trace.details[k]!
        loadedAt.set(carrier!.serial, at)
        loads++
        if (counts) told.loads++
        break
      case 'unload': {
        const loaded = loadedAt.get(trace.details[k]!)!
        loadedAt.delete(trace.details[k]!)
        carrier!.serial = null
        unloads++
        told.productSecondsByProduct += Math.max(0, Math.min(at, last) - Math.max(loaded, warmup))
        if (counts) {
          told.outputs.push(at)
          told.timesInLine.push(at - loaded)
        }
        break
      }
      case 'stop begin':
        holds.begin(place)
        if (counts) told.breakdowns[place]!.count++
        break
      case 'stop end':
        holds.end(place)
        break
      case 'break begin':
        holds.isBreak = true
        if (counts) told.breaks.count++
        break
      case 'break end':
        holds.isBreak = false
        break
      case 'look':
      case 'brake':
      case 'standstill':
    }
    if (doneAt.has(k)) carrier!.isDone = doneAt.get(k)!
  }

  let now = 0
  for (let k = 0; k < trace.length; k++) {
    const at = trace.seconds[k]!
    if (at > last) break
    if (at > now) {
      lasts(now, at)
      now = at
      told.movesApartMax = Math.max(told.movesApartMax, Math.max(...movesOut) - Math.min(...movesOut))
    }
    happens(k, at)
    told.leastInLine = Math.min(told.leastInLine, loads - unloads)
    told.mostInLine = Math.max(told.mostInLine, loads - unloads)
  }
  lasts(now, last)
  for (const loaded of loadedAt.values()) told.productSecondsByProduct += Math.max(0, last - Math.max(loaded, warmup))
  return told
}

const STATIONS = [
  'working',
  'handling',
  'waiting for operator',
  'waiting for product',
  'waiting for receiver',
  'blocked',
  'exchanging',
  'starved',
  'stopped',
  'break',
]
const ZONES = ['free', 'claimed', 'working', 'blocked', 'other', 'vacating', 'stopped']

function addCauses(into: CauseSeconds, causes: readonly string[], seconds: number): void {
  for (const cause of causes) into.set(cause, (into.get(cause) ?? 0) + seconds)
}
