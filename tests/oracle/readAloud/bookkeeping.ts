/** What a run reports, counted from the log and from the states of the times between instants. (MODEL.md §11) */
import {
  type BreakdownResult,
  type HandlingResult,
  type RunEnd,
  type RunResult,
  STORE,
  type SupplyResult,
  type TallyResult,
} from '@loopwright/line'
import type { LogEntry } from './eventLog.ts'
import { supplySpecAt } from './goods.ts'
import { onGrid } from './grid.ts'
import { breakIsOn } from './held.ts'
import { carrierState, stationCauses, stationState, zoneCauses, zoneState } from './states.ts'
import type { World } from './world.ts'

export type Seconds = Map<string, number>

function add(map: Seconds, key: string, seconds: number): void {
  map.set(key, (map.get(key) ?? 0) + seconds)
}

export interface Books {
  readonly warmup: number
  readonly end: number
  readonly stations: { readonly states: Seconds; readonly causes: Seconds; block: number; longestBlock: number }[]
  readonly zones: { readonly states: Seconds; readonly causes: Seconds; occupied: number }[]
  readonly carriers: { readonly states: Seconds }[]
  readonly down: number[]
  /** by station */
  readonly safetySeconds: number[]
  /** by supply */
  readonly queues: { productSeconds: number; max: number }[]
  /** ∫ carriers in the store dt */
  storeSeconds: number
  breakSeconds: number
  /** ∫ products in line dt */
  productSeconds: number
}

export function openBooks(w: World): Books {
  return {
    warmup: onGrid(w.spec.window.warmupSeconds),
    end: onGrid(w.spec.window.endSeconds),
    stations: w.spec.stations.map(() => ({ states: new Map(), causes: new Map(), block: 0, longestBlock: 0 })),
    zones: w.spec.zones.map(() => ({ states: new Map(), causes: new Map(), occupied: 0 })),
    carriers: w.carriers.map(() => ({ states: new Map() })),
    down: w.spec.breakdowns.map(() => 0),
    safetySeconds: w.spec.stations.map(() => 0),
    queues: w.supplies.map(() => ({ productSeconds: 0, max: 0 })),
    storeSeconds: 0,
    breakSeconds: 0,
    productSeconds: 0,
  }
}

/** The states of now last until `until`: books what of it lies in the window. */
export function bookUntil(books: Books, w: World, until: number): void {
  const seconds = Math.min(until, books.end) - Math.max(w.t, books.warmup)
  if (seconds <= 0) return
  books.stations.forEach((book, station) => {
    const state = stationState(w, station)
    add(book.states, state, seconds)
    if (state === 'stopped' || state === 'break') for (const cause of stationCauses(w, station)) add(book.causes, cause, seconds)
    book.block = state === 'blocked' ? book.block + seconds : 0
    book.longestBlock = Math.max(book.longestBlock, book.block)
  })
  books.zones.forEach((book, zone) => {
    add(book.states, zoneState(w, zone), seconds)
    for (const cause of zoneCauses(w, zone)) add(book.causes, cause, seconds)
    if (w.carriers.some((carrier) => carrier.place === zone)) book.occupied += seconds
  })
  w.carriers.forEach((carrier, index) => {
    add(books.carriers[index]!.states, carrierState(carrier), seconds)
    if (carrier.product !== null) books.productSeconds += seconds
  })
  w.sources.forEach((source, index) => {
    if (source.down) books.down[index]! += seconds
  })
  w.spec.stations.forEach((_, station) => {
    if (w.safetyStops.some((stop) => stop.station === station)) books.safetySeconds[station]! += seconds
  })
  w.supplies.forEach((supply, index) => {
    const length = supply?.queue.length ?? 0
    const book = books.queues[index]!
    book.productSeconds += length * seconds
    book.max = Math.max(book.max, length)
  })
  books.storeSeconds += w.carriers.filter(({ place }) => place === STORE).length * seconds
  if (breakIsOn(w)) books.breakSeconds += seconds
}

function tally(values: readonly number[]): TallyResult {
  const count = values.length
  if (count === 0) return { count, mean: null, sd: null, min: null, max: null }
  const mean = values.reduce((a, b) => a + b, 0) / count
  const squares = values.reduce((sum, x) => sum + (x - mean) ** 2, 0)
  const sd = count < 2 ? null : Math.sqrt(squares / (count - 1))
  return { count, mean, sd, min: Math.min(...values), max: Math.max(...values) }
}

const STATION = [
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
] as const
const ZONE = ['free', 'claimed', 'working', 'blocked', 'other', 'vacating', 'stopped'] as const
const CARRIER = ['moving', 'worked on', 'waiting with product', 'waiting empty'] as const

function inOrder<S extends string>(states: Seconds, order: readonly S[]): Record<S, number> {
  return Object.fromEntries(order.map((state) => [state, states.get(state) ?? 0])) as Record<S, number>
}

function causesOf(causes: Seconds): { cause: string; seconds: number }[] {
  return [...causes].map(([cause, seconds]) => ({ cause, seconds }))
}

interface Laps {
  readonly ended: number[]
  readonly byCarrier: number[]
}

/** "between two move starts of one carrier out of the zone of the first unload station by station index, without one of zone 0; laps that end in the window" */
function lapsOf(w: World, inWindow: (t: number) => boolean): Laps {
  const zone = w.spec.stations.find((station) => station.unload !== null)?.zone ?? 0
  const last: (number | null)[] = w.carriers.map(() => null)
  const ended: number[] = []
  const byCarrier = w.carriers.map(() => 0)
  for (const entry of w.log) {
    if (entry.what !== 'move start' || entry.zone !== zone) continue
    const before = last[entry.carrier]!
    if (before !== null && inWindow(entry.t)) {
      ended.push(entry.t - before)
      byCarrier[entry.carrier]! += 1
    }
    last[entry.carrier] = entry.t
  }
  return { ended, byCarrier }
}

/** move starts out of the station's zone by a carrier that had a duty there in that stay */
function cyclesOf(log: readonly LogEntry[], station: number, zone: number, inWindow: (t: number) => boolean): number {
  let cycles = 0
  let hadDuty = false
  for (const entry of log) {
    if (entry.what === 'duty start' && entry.station === station) hadDuty = true
    if (entry.what !== 'move start' || entry.zone !== zone) continue
    if (hadDuty && inWindow(entry.t)) cycles += 1
    hadDuty = false
  }
  return cycles
}

/** "supplies with arrivals: that of the line first, then by station" */
function suppliesOf(books: Books, w: World, inWindow: (t: number) => boolean, length: number): SupplyResult[] {
  const entries = w.log.filter(({ t }) => inWindow(t))
  return w.supplies.flatMap((supply, index): SupplyResult[] => {
    if (supply === null || supplySpecAt(w, index).arrivals.kind === 'always') return []
    const queued = entries.filter((entry) => entry.what === 'product arrival' && entry.supply === index)
    const turnedAway = entries.filter((entry) => entry.what === 'turned away' && entry.supply === index).length
    // a queue is at its longest right after an arrival, also if the product is taken at that instant
    const lengths = queued.map((entry) => (entry.what === 'product arrival' ? entry.queue : 0))
    const waits = entries.flatMap((entry) => (entry.what === 'taken from queue' && entry.supply === index ? [entry.waited] : []))
    const { productSeconds, max } = books.queues[index]!
    return [
      {
        name: supply.name,
        arrivals: queued.length + turnedAway,
        turnedAway,
        queueMean: productSeconds / length,
        queueMax: Math.max(max, ...lengths),
        waiting: tally(waits),
      },
    ]
  })
}

/** Of the pushes and pulls that end in the window, with all that held them: "named operators in their order, then stations with operators of their own and a manual path" */
function handlingsOf(w: World, inWindow: (t: number) => boolean): HandlingResult[] {
  const results = new Map<string, HandlingResult>()
  w.operators.forEach(({ ownOf }, index) => {
    const operator = ownOf === null ? w.spec.operators[index]!.name : w.spec.stations[ownOf]!.name
    const key = `${ownOf === null} ${operator}`
    let { count, seconds } = results.get(key) ?? { count: 0, seconds: 0 }
    let start = 0
    for (const entry of w.log) {
      if (entry.what === 'push start' && entry.operator === index) start = entry.t
      if (entry.what !== 'push end' || entry.operator !== index || !inWindow(entry.t)) continue
      count += 1
      seconds += entry.t - start
    }
    results.set(key, { operator, count, seconds })
  })
  return [...results.values()]
}

function safetyStopsOf(books: Books, w: World, inWindow: (t: number) => boolean): BreakdownResult[] {
  return w.spec.stations.flatMap(({ name, safetyStop }, station): BreakdownResult[] => {
    if (safetyStop === null) return []
    const count = w.log.filter((entry) => entry.what === 'safety stop begin' && entry.station === station && inWindow(entry.t)).length
    return [{ name, count, seconds: books.safetySeconds[station]! }]
  })
}

export function closeBooks(books: Books, w: World, seed: string, replication: number, end: RunEnd): RunResult {
  const { warmup, end: endSeconds } = books
  const length = endSeconds - warmup
  const inWindow = (t: number): boolean => t > warmup && t <= endSeconds
  const { log, spec } = w
  const counted = (what: LogEntry['what']): LogEntry[] => log.filter((entry) => entry.what === what && inWindow(entry.t))
  const takenOff = counted('unload').filter((entry) => entry.what === 'unload')
  const outputSeconds = takenOff.filter(({ rejected }) => !rejected).map((entry) => entry.t)
  const outputByHour: number[] = []
  for (let hour = 0; hour * 3600 < length; hour++) {
    const from = warmup + hour * 3600
    outputByHour.push(outputSeconds.filter((t) => t > from && t <= from + 3600).length)
  }
  const loadedAt = new Map<number, number>()
  const timesInLine: number[] = []
  for (const entry of log) {
    if (entry.what === 'load') loadedAt.set(entry.serial, entry.t)
    if (entry.what === 'unload' && !entry.rejected && inWindow(entry.t)) timesInLine.push(entry.t - loadedAt.get(entry.serial)!)
  }
  const laps = lapsOf(w, inWindow)
  return {
    seed,
    replication,
    window: { warmupSeconds: warmup, endSeconds },
    end,
    loads: counted('load').length,
    output: outputSeconds.length,
    rejections: counted('reject').length,
    rejectedTakenOff: takenOff.length - outputSeconds.length,
    storeMean: books.storeSeconds / length,
    supplies: suppliesOf(books, w, inWindow, length),
    handlings: handlingsOf(w, inWindow),
    safetyStops: safetyStopsOf(books, w, inWindow),
    outputPerHour: (outputSeconds.length * 3600) / length,
    outputByHour,
    outputSeconds,
    lap: tally(laps.ended),
    timeInLine: tally(timesInLine),
    productsInLineMean: books.productSeconds / length,
    stations: books.stations.map((book, index) => ({
      name: spec.stations[index]!.name,
      seconds: inOrder(book.states, STATION),
      longestBlockSeconds: book.longestBlock,
      cycles: cyclesOf(log, index, spec.stations[index]!.zone, inWindow),
      stoppedBy: causesOf(book.causes),
    })),
    zones: books.zones.map((book, index) => ({
      name: spec.zones[index]!.name,
      seconds: inOrder(book.states, ZONE),
      occupancyMean: book.occupied / length,
      movesOut: counted('move start').filter((entry) => entry.what === 'move start' && entry.zone === index).length,
      stoppedBy: causesOf(book.causes),
    })),
    carriers: books.carriers.map((book, index) => ({ seconds: inOrder(book.states, CARRIER), laps: laps.byCarrier[index]! })),
    breakdowns: spec.breakdowns.map((source, index) => ({
      name: source.name,
      count: counted('stop begin').filter((entry) => entry.what === 'stop begin' && entry.source === index).length,
      seconds: books.down[index]!,
    })),
    breaks: { count: counted('break begin').length, seconds: books.breakSeconds },
    events: log.length,
  }
}
