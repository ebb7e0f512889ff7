/** Stopped time by its cause: the breakdown sources in their order, then safety stops by station, then the breaks. Where causes overlap, each counts the whole time. (MODEL.md §11) */
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { stopSources } from '../telling/stopSources.ts'

export class Causes {
  readonly line: Line
  /** causes that there are, by name: sources, stations with a safety stop, and one for the breaks */
  readonly names: readonly string[]
  readonly length: number
  /** stops begun, by cause */
  readonly count: Int32Array
  /** time down, by cause */
  readonly seconds: Float64Array
  readonly since: Float64Array
  /** seconds by part and cause; length zones · causes, stations · causes */
  readonly zoneSeconds: Float64Array
  readonly stationSeconds: Float64Array
  /** seconds that the next holdZone or holdStation adds; handed over here, so that no number is boxed */
  readonly held = new Float64Array(1)

  constructor(line: Line) {
    this.line = line
    this.names = [...stopSources(line.spec).map(({ name }) => name), 'break']
    this.length = this.names.length
    this.count = new Int32Array(this.length)
    this.seconds = new Float64Array(this.length)
    this.since = new Float64Array(this.length)
    this.zoneSeconds = new Float64Array(line.zones * this.length)
    this.stationSeconds = new Float64Array(line.stations * this.length)
  }

  /** Counts anew from `now`; what is down stays down. */
  restart(now: number): void {
    this.count.fill(0)
    this.since.fill(now)
    for (const list of [this.seconds, this.zoneSeconds, this.stationSeconds]) list.fill(0)
  }

  /** @param isFirst  no other stop of this cause is under way */
  begin(cause: number, isFirst = true): void {
    this.count[cause]!++
    if (isFirst) this.since[cause] = this.line.now
  }

  end(cause: number): void {
    this.seconds[cause]! += this.line.now - this.since[cause]!
  }

  /** Adds what is still down at the line's `now`. */
  finish(): void {
    for (let source = 0; source < this.line.sources; source++) if (this.line.stops.sourceDown[source] === 1) this.end(source)
    for (let k = 0; k < this.line.safety.safetyStations.length; k++)
      if (this.line.safety.safetyActive[k]! > 0) this.end(this.line.sources + k)
    if (this.line.stops.breaksNow > 0) this.end(this.length - 1)
  }

  /** Adds a zone's stopped time, `held`, to every cause that holds it now. */
  holdZone(zone: number): void {
    this.spread(zone, NONE, this.zoneSeconds, zone * this.length)
  }

  /** Adds a station's time in `stopped` or `break`, `held`, to every cause that holds it or its zone now. */
  holdStation(station: number): void {
    this.spread(this.line.work.stationZone[station]!, station, this.stationSeconds, station * this.length)
  }

  private spread(zone: number, station: number, into: Float64Array, first: number): void {
    const { line } = this
    const seconds = this.held[0]!
    for (let source = 0; source < line.sources; source++) {
      if (line.stops.sourceDown[source] === 0) continue
      const { part } = line.spec.breakdowns[source]!
      const holds =
        part.kind === 'section'
          ? line.sections.zoneSection[zone] === part.index
          : part.kind === 'station'
            ? part.index === station
            : part.index === zone
      if (holds) into[first + source]! += seconds
    }
    for (let k = 0; k < line.safety.safetyStations.length; k++) {
      const section = line.sections.zoneSection[line.work.stationZone[line.safety.safetyStations[k]!]!]!
      if (line.safety.safetyActive[k]! > 0 && line.sections.zoneSection[zone] === section) into[first + line.sources + k]! += seconds
    }
    const breakHolds = !line.spec.conveyorDuringBreaks || (station !== NONE && line.stops.stationBreaks[station] === 1)
    if (line.stops.breaksNow > 0 && breakHolds) into[first + this.length - 1]! += seconds
  }
}
