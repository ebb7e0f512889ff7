/** Events of a run to what is shown of it. */
import { type LineSpec, type RunEnd, startZones, stopSources, TRACE_KINDS, type TraceKind } from '@loopwright/line'
import { type Scenario, titleOf } from '@loopwright/scenario'
import type { TraceColumns } from '@loopwright/study'
import type { CarrierTrack, Hold, Leg, OperatorStretch, Replay } from './replay.ts'
import { replayMarks } from './replayMarks.ts'
import { stationStretches } from './stationStretches.ts'

/**
 * @param trace  all events of one run of the line of this scenario
 * @param end    how that run ended
 */
export function replayOf(scenario: Scenario, trace: TraceColumns, end: RunEnd): Replay {
  const { line } = scenario
  const endSeconds = end.atSeconds ?? line.window.endSeconds
  const holds = holdsOf(scenario, trace, endSeconds)
  const stations = stationStretches(line, trace, holds, endSeconds)
  const made = instantsOf(trace, 'unload', (k) => isGood(line, trace, k))
  return {
    endSeconds,
    warmupSeconds: line.window.warmupSeconds,
    carriers: carrierTracks(line, trace, holds, endSeconds),
    stations,
    holds,
    operators: operatorStretches(line, trace, endSeconds),
    instants: Float64Array.from(new Set(Array.from(trace.seconds))),
    made,
    marks: replayMarks(line, { stations, holds, made, end, endSeconds }),
  }
}

const kindOf = (trace: TraceColumns, k: number): TraceKind => TRACE_KINDS[trace.kinds[k]!]!

function instantsOf(trace: TraceColumns, kind: TraceKind, which: (k: number) => boolean): Float64Array {
  const found: number[] = []
  for (let k = 0; k < trace.kinds.length; k += 1) if (kindOf(trace, k) === kind && which(k)) found.push(trace.seconds[k]!)
  return Float64Array.from(found)
}

/** Taken off where good products are. */
function isGood({ stations }: LineSpec, trace: TraceColumns, k: number): boolean {
  return stations.some(({ zone, accepts }) => zone === trace.places[k] && accepts !== 'rejected')
}

/** Stops and breaks, by their beginnings. */
function holdsOf(scenario: Scenario, trace: TraceColumns, endSeconds: number): Hold[] {
  const { line } = scenario
  const sources = stopSources(line)
  const open = new Map<number, Hold & { to: number }>()
  const found: (Hold & { to: number })[] = []
  const begin = (place: number, from: number): Hold & { to: number } => {
    const rest = { from, to: endSeconds, isBreak: place < 0 }
    if (place < 0) return { name: 'Break', ...rest, zones: line.conveyorDuringBreaks ? [] : null, station: null }
    const source = sources[place]!
    if (source.kind === 'safety stop')
      return { name: source.name, ...rest, zones: sectionOf(line, line.stations[source.station]!.zone), station: null }
    const { part } = source.breakdown
    const zones = part.kind === 'section' ? line.sections[part.index]!.zones : part.kind === 'station' ? [] : [part.index]
    return { name: titleOf(scenario, 'stop', source.name), ...rest, zones, station: part.kind === 'station' ? part.index : null }
  }
  for (let k = 0; k < trace.kinds.length; k += 1) {
    const kind = kindOf(trace, k)
    const place = trace.places[k]!
    if (kind === 'stop begin' || kind === 'break begin') {
      const hold = begin(kind === 'break begin' ? -1 : place, trace.seconds[k]!)
      open.set(kind === 'break begin' ? -1 : place, hold)
      found.push(hold)
    } else if (kind === 'stop end' || kind === 'break end') {
      const hold = open.get(kind === 'break end' ? -1 : place)
      if (hold !== undefined) hold.to = trace.seconds[k]!
    }
  }
  return found
}

const sectionOf = ({ sections }: LineSpec, zone: number): readonly number[] =>
  sections.find(({ zones }) => zones.includes(zone))?.zones ?? [zone]

function carrierTracks(line: LineSpec, trace: TraceColumns, holds: readonly Hold[], endSeconds: number): CarrierTrack[] {
  const standing = holds.filter(({ zones }) => zones === null || zones.length > 0)
  const tracks = startZones(line).map((startZone) => ({ startZone, legs: [] as Leg[], loadChanges: [] as number[] }))
  const open: ((Leg & { arrive: number; open: boolean; frozen: (readonly [number, number])[] }) | null)[] = tracks.map(() => null)
  const close = (carrier: number, arrive: number, ended: boolean): void => {
    const leg = open[carrier]
    if (leg === null || leg === undefined) return
    leg.arrive = arrive
    leg.open = ended
    for (const { from, to, zones } of standing) {
      if (to <= leg.start || from >= arrive) continue
      if (zones === null || zones.includes(leg.from) || zones.includes(leg.to))
        leg.frozen.push([Math.max(from, leg.start), Math.min(to, arrive)])
    }
    open[carrier] = null
  }
  for (let k = 0; k < trace.kinds.length; k += 1) {
    const carrier = trace.carriers[k]!
    if (carrier < 0) continue
    const kind = kindOf(trace, k)
    const now = trace.seconds[k]!
    if (kind === 'move start') {
      close(carrier, now, false)
      const path = trace.places[k]!
      const { from, to } = line.paths[path]!
      const leg = { from, to, path, start: now, arrive: endSeconds, open: false, frozen: [] as (readonly [number, number])[] }
      open[carrier] = leg
      tracks[carrier]!.legs.push(leg)
    } else if (kind === 'rest') close(carrier, now, false)
    else if (kind === 'load' || kind === 'unload') {
      const changes = tracks[carrier]!.loadChanges
      // changes go by turns: loaded, empty, loaded …
      if ((changes.length % 2 === 0) === (kind === 'load')) changes.push(now)
    }
  }
  for (const carrier of tracks.keys()) close(carrier, endSeconds, true)
  return tracks
}

/** Named operators; others stand at their station for good. */
function operatorStretches(line: LineSpec, trace: TraceColumns, endSeconds: number): Replay['operators'] {
  const stretches = line.operators.map(({ start }): (OperatorStretch & { to: number })[] => [
    { from: 0, to: endSeconds, station: start, there: true, bound: false },
  ])
  const next = (operator: number, from: number, what: Pick<OperatorStretch, 'station' | 'there' | 'bound'>): void => {
    const own = stretches[operator]!
    own.at(-1)!.to = from
    own.push({ from, to: endSeconds, ...what })
  }
  for (let k = 0; k < trace.kinds.length; k += 1) {
    const kind = kindOf(trace, k)
    const [station, operator, now] = [trace.places[k]!, trace.details[k]!, trace.seconds[k]!]
    if (kind === 'operator sent') next(operator, now, { station, there: false, bound: true })
    else if (kind === 'operator there') next(operator, now, { station, there: true, bound: true })
    else if (kind === 'operator free') next(operator, now, { station, there: true, bound: false })
  }
  return line.operators.map(({ name }, index) => ({ name, stretches: stretches[index]!.filter(({ from, to }) => to > from) }))
}
