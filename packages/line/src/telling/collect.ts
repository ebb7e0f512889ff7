/**
 * What a run tells of itself, gathered from differences of times: a part's seconds are added up when its state changes, nothing is polled. (MODEL.md §11)
 * States are judged once at the end of each instant, for the zones that something happened to. Nothing here changes the line: a run that is not told is the same.
 * It has over 300 lines because all that is gathered stands in one class, whose columns the engines fill.
 */
import { S_BLOCKED, S_EXCHANGING, S_STARVED, S_STOPPED, Z_FREE, Z_STOPPED, Z_VACATING } from './states.ts'
import { Causes } from '../stops/causes.ts'
import { type GrowingList, makeRoom } from '../state/growingList.ts'
import { carrierState, stationState, zoneState } from './judge.ts'
import { CHANGE_AT, Level } from './level.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from './result.ts'
import type { Line } from '../state/line.ts'
import { addTo, makeWorkList, NONE, type WorkList } from '../state/lists.ts'
import { isClearOver } from '../state/moves.ts'
import { addToTally, TALLY, VALUE } from './tally.ts'

/** What is told of a part stands together: its seconds by state, then the instant of its last change of state, and what else there is by part. */
export const ZONE_SINCE = ZONE_STATES.length
/** instant since which a carrier counts as in the zone, and seconds so far */
export const OCCUPIED_SINCE = ZONE_SINCE + 1
export const OCCUPIED_SECONDS = ZONE_SINCE + 2
export const ZONE_WIDTH = ZONE_SINCE + 3
export const STATION_SINCE = STATION_STATES.length
export const BLOCKED_SINCE = STATION_SINCE + 1
/** seconds of the longest time blocked */
export const LONGEST_BLOCK = STATION_SINCE + 2
export const STATION_WIDTH = STATION_SINCE + 3
export const CARRIER_SINCE = CARRIER_STATES.length
export const CARRIER_WIDTH = CARRIER_SINCE + 1

export class Collector {
  readonly line: Line
  /** zones to judge at the end of the instant */
  readonly touched: WorkList
  readonly stationState: Uint8Array
  /** by part: its record, as above */
  readonly stationSeconds: Float64Array
  readonly cycles: Int32Array
  readonly zoneState: Uint8Array
  readonly zoneSeconds: Float64Array
  readonly movesOut: Int32Array
  readonly carrierState: Uint8Array
  readonly carrierSeconds: Float64Array
  readonly carrierLaps: Int32Array
  /** instant of its last move start out of the lap zone; NaN before the first */
  readonly carrierLapStart: Float64Array
  readonly causes: Causes
  readonly lap = new Float64Array(TALLY)
  readonly timeInLine = new Float64Array(TALLY)
  /** 0: the integral of products over time, 1: instant up to which it stands */
  readonly products = new Float64Array(2)
  productsInLine = 0
  loads = 0
  movesBefore = 0
  loadsBefore = 0
  outputBefore = 0
  movesFromStore = 0
  rejections = 0
  rejectedTakenOff = 0
  readonly outputs: GrowingList = { values: new Float64Array(256), length: 0 }
  readonly lapZone: number
  /** carriers in the store, or on their way into it */
  readonly stored = new Level()

  constructor(line: Line) {
    this.line = line
    const { zones, stations, carriers } = line
    this.causes = new Causes(line)
    this.touched = makeWorkList(zones)
    this.stationState = new Uint8Array(stations)
    this.stationSeconds = new Float64Array(stations * STATION_WIDTH)
    this.cycles = new Int32Array(stations)
    this.zoneState = new Uint8Array(zones)
    this.zoneSeconds = new Float64Array(zones * ZONE_WIDTH)
    this.movesOut = new Int32Array(zones)
    this.carrierState = new Uint8Array(carriers)
    this.carrierSeconds = new Float64Array(carriers * CARRIER_WIDTH)
    this.carrierLaps = new Int32Array(carriers)
    this.carrierLapStart = new Float64Array(carriers)
    const unload = line.spec.stations.find((station) => station.unload !== null)
    this.lapZone = unload === undefined ? 0 : unload.zone
  }

  /** Forgets everything: the state at time 0. */
  reset(): void {
    this.restart(0)
    this.movesBefore = 0
    this.loadsBefore = 0
    this.outputBefore = 0
    this.movesFromStore = 0
    this.products.fill(0)
    this.productsInLine = 0
    this.stored.count = this.line.moves.storeCount
    for (let zone = 0; zone < this.line.zones; zone++) {
      this.zoneSeconds[zone * ZONE_WIDTH + OCCUPIED_SINCE] = 0
      addTo(this.touched, zone)
    }
    this.stationState.fill(0)
    this.zoneState.fill(0)
    this.carrierState.fill(0)
    this.carrierLapStart.fill(Number.NaN)
    for (let carrier = 0; carrier < this.line.carriers; carrier++) {
      if (this.line.moves.carrierZone[carrier] === this.line.store) this.judgeCarrier(carrier)
    }
    this.judge()
  }

  /** The warm-up is over at `now`: what was counted is forgotten, what is under way goes on. */
  restart(now: number): void {
    const { zoneSeconds, stationSeconds, carrierSeconds } = this
    for (let zone = 0; zone < this.movesOut.length; zone++) this.movesBefore += this.movesOut[zone]!
    this.loadsBefore += this.loads
    this.outputBefore += this.outputs.length
    for (const list of [zoneSeconds, stationSeconds, carrierSeconds]) list.fill(0)
    this.causes.restart(now)
    for (let at = 0; at < zoneSeconds.length; at += ZONE_WIDTH) zoneSeconds[at + ZONE_SINCE] = zoneSeconds[at + OCCUPIED_SINCE] = now
    for (let at = STATION_SINCE; at < stationSeconds.length; at += STATION_WIDTH) stationSeconds.fill(now, at, at + 2)
    for (let at = CARRIER_SINCE; at < carrierSeconds.length; at += CARRIER_WIDTH) carrierSeconds[at] = now
    for (const list of [this.lap, this.timeInLine, this.cycles, this.movesOut, this.carrierLaps]) list.fill(0)
    this.loads = 0
    this.rejections = 0
    this.rejectedTakenOff = 0
    this.outputs.length = 0
    this.products.set([0, now])
    this.stored.restart(now)
  }

  /** Something happened to the zone, or to the station in it. */
  touch(zone: number): void {
    addTo(this.touched, zone)
  }

  /** Judges the states of the touched zones, of the carriers in them and of their stations. */
  judge(): void {
    const { touched, line } = this
    if (touched.length === 0) return
    for (let place = 0; place < touched.length; place++) {
      const zone = touched.items[place]!
      touched.isIn[zone] = 0
      if (isClearOver(line, zone)) this.onLateClear(zone)
      const carrier = line.moves.zoneCarrier[zone]!
      if (carrier !== NONE) this.judgeCarrier(carrier)
      this.settleZone(zone)
      this.zoneState[zone] = zoneState(line, zone)
      const station = line.work.zoneStation[zone]!
      if (station === NONE) continue
      const is = stationState(line, station)
      if (is === this.stationState[station]) continue
      this.settleStation(station)
      if (this.stationState[station] === S_BLOCKED) this.endBlock(station)
      if (is === S_BLOCKED) this.stationSeconds[station * STATION_WIDTH + BLOCKED_SINCE] = line.now
      this.stationState[station] = is
    }
    touched.length = 0
  }

  /** The zone has been clear since the time of its clear: what it and its station were told to be until now changes back then. */
  onLateClear(zone: number): void {
    const { line } = this
    const at = line.queue.times[line.slots.clearSlot + zone]!
    if (this.zoneState[zone] === Z_VACATING) {
      this.zoneSeconds[zone * ZONE_WIDTH + Z_VACATING]! += at - this.zoneSeconds[zone * ZONE_WIDTH + ZONE_SINCE]!
      this.zoneSeconds[zone * ZONE_WIDTH + ZONE_SINCE] = at
      this.zoneState[zone] = Z_FREE
    }
    const station = line.work.zoneStation[zone]!
    if (station !== NONE && this.stationState[station] === S_EXCHANGING) {
      this.stationSeconds[station * STATION_WIDTH + S_EXCHANGING]! += at - this.stationSeconds[station * STATION_WIDTH + STATION_SINCE]!
      this.stationSeconds[station * STATION_WIDTH + STATION_SINCE] = at
      this.stationState[station] = S_STARVED
    }
  }

  onMoveStart(from: number, to: number, carrier: number): void {
    const { line } = this
    const { now } = line
    if (to === line.store || from === line.store) {
      // in one place: `now` as a parameter in two of them would be boxed for every move
      this.stored.sums[CHANGE_AT] = now
      this.stored.change((to === line.store ? 1 : 0) - (from === line.store ? 1 : 0))
    }
    if (to !== line.store) {
      this.touch(to)
      this.zoneSeconds[to * ZONE_WIDTH + OCCUPIED_SINCE] = now
    }
    if (from === line.store) {
      this.movesFromStore++
      return
    }
    this.touch(from)
    this.zoneSeconds[from * ZONE_WIDTH + OCCUPIED_SECONDS]! += now - this.zoneSeconds[from * ZONE_WIDTH + OCCUPIED_SINCE]!
    this.movesOut[from]!++
    const station = line.work.zoneStation[from]!
    if (station !== NONE && line.work.stationServed[station] === 1) {
      this.cycles[station]!++
    }
    if (from === this.lapZone) this.onLap(carrier)
  }

  /** The carrier leaves the zone where laps begin and end. */
  onLap(carrier: number): void {
    const { now } = this.line
    const start = this.carrierLapStart[carrier]!
    if (!Number.isNaN(start)) {
      this.lap[VALUE] = now - start
      addToTally(this.lap)
      this.carrierLaps[carrier]!++
    }
    this.carrierLapStart[carrier] = now
  }

  onLoad(): void {
    this.countProducts()
    this.productsInLine++
    this.loads++
  }

  onUnload(carrier: number): void {
    const { now } = this.line
    this.countProducts()
    this.productsInLine--
    if (this.line.goods.carrierRejected[carrier] === 1) {
      this.rejectedTakenOff++
      return
    }
    this.timeInLine[VALUE] = now - this.line.goods.carrierLoaded[carrier]!
    addToTally(this.timeInLine)
    makeRoom(this.outputs)
    this.outputs.values[this.outputs.length++] = now
  }

  /** A cause of stops is about to begin or end: what stands stopped is settled with the causes that held until now. */
  onCauseChange(cause: number): void {
    const { line } = this
    const part = cause < line.sources ? line.spec.breakdowns[cause]!.part : null
    if (part !== null && part.kind !== 'section') {
      const zone = part.kind === 'station' ? line.work.stationZone[part.index]! : part.index
      this.settleStopped(zone)
    } else for (let zone = 0; zone < line.zones; zone++) this.settleStopped(zone)
  }

  /** Adds what is under way up to the line's `now`, the end of the window. */
  finish(): void {
    const { line } = this
    for (let zone = 0; zone < line.zones; zone++) {
      this.settleZone(zone)
      if (line.moves.zoneCarrier[zone] !== NONE)
        this.zoneSeconds[zone * ZONE_WIDTH + OCCUPIED_SECONDS]! += line.now - this.zoneSeconds[zone * ZONE_WIDTH + OCCUPIED_SINCE]!
    }
    for (let station = 0; station < line.stations; station++) {
      this.settleStation(station)
      if (this.stationState[station] === S_BLOCKED) this.endBlock(station)
    }
    for (let carrier = 0; carrier < line.carriers; carrier++) this.settleCarrier(carrier)
    this.countProducts()
    this.causes.finish()
  }

  private settleStopped(zone: number): void {
    if (this.zoneState[zone] === Z_STOPPED) this.settleZone(zone)
    const station = this.line.work.zoneStation[zone]!
    if (station !== NONE && this.stationState[station]! >= S_STOPPED) this.settleStation(station)
  }

  private settleZone(zone: number): void {
    const { now } = this.line
    const seconds = now - this.zoneSeconds[zone * ZONE_WIDTH + ZONE_SINCE]!
    this.zoneSeconds[zone * ZONE_WIDTH + ZONE_SINCE] = now
    const state = this.zoneState[zone]!
    this.zoneSeconds[zone * ZONE_WIDTH + state]! += seconds
    this.causes.held[0] = seconds
    if (state === Z_STOPPED) this.causes.holdZone(zone)
  }

  private settleStation(station: number): void {
    const { now } = this.line
    const seconds = now - this.stationSeconds[station * STATION_WIDTH + STATION_SINCE]!
    this.stationSeconds[station * STATION_WIDTH + STATION_SINCE] = now
    if (seconds === 0) return
    const state = this.stationState[station]!
    this.stationSeconds[station * STATION_WIDTH + state]! += seconds
    this.causes.held[0] = seconds
    if (state >= S_STOPPED) this.causes.holdStation(station)
  }

  judgeCarrier(carrier: number): void {
    this.settleCarrier(carrier)
    this.carrierState[carrier] = carrierState(this.line, carrier)
  }

  private settleCarrier(carrier: number): void {
    const { now } = this.line
    this.carrierSeconds[carrier * CARRIER_WIDTH + this.carrierState[carrier]!]! +=
      now - this.carrierSeconds[carrier * CARRIER_WIDTH + CARRIER_SINCE]!
    this.carrierSeconds[carrier * CARRIER_WIDTH + CARRIER_SINCE] = now
  }

  private endBlock(station: number): void {
    const seconds = this.line.now - this.stationSeconds[station * STATION_WIDTH + BLOCKED_SINCE]!
    if (seconds > this.stationSeconds[station * STATION_WIDTH + LONGEST_BLOCK]!)
      this.stationSeconds[station * STATION_WIDTH + LONGEST_BLOCK] = seconds
  }

  private countProducts(): void {
    const { now } = this.line
    this.products[0]! += this.productsInLine * (now - this.products[1]!)
    this.products[1] = now
  }
}
