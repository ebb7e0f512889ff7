/** Where carriers start, and when in each stay they have nothing left to do: read off a trace. */
import { type LineSpec, type RunResult, type Trace, TRACE_KINDS } from '@loopwright/line'

/** Where the carriers stand at time 0, by the page. */
export function startOf({ carriers, zones }: LineSpec): number[] {
  const { count, start } = carriers
  const places = zones.map((_, zone) => zone).filter((zone) => zones[zone]!.transfer?.enterOnlyIfExitClear !== true)
  if (start === 'packed') return places.slice(0, count)
  if (start === 'spread') return Array.from({ length: count }, (_, c) => places[Math.floor((c * places.length) / count)]!)
  return [...(start as readonly number[])]
}

/**
 * The events after which a carrier has nothing left to do in its zone: the last one of each stay but its start out. Known from what follows:
 * null where the trace ends first, unless the line stands still, so that nothing more would have come (but for a product, which is looked at elsewhere).
 */
export function doneEvents(spec: LineSpec, trace: Trace, end: RunResult['end']): Map<number, boolean | null> {
  const lastOf = new Map<number, number>()
  const done = new Map<number, boolean | null>()
  for (let k = 0; k < trace.length; k++) {
    const carrier = trace.carriers[k]!
    const kind = TRACE_KINDS[trace.kinds[k]!]!
    if (carrier < 0) continue
    if (kind === 'move start') {
      const before = lastOf.get(carrier)
      if (before !== undefined && TRACE_KINDS[trace.kinds[before]!] !== 'look') done.set(before, true)
    } else if (kind !== 'load' && kind !== 'unload') lastOf.set(carrier, k)
    if (kind === 'move start') lastOf.delete(carrier)
  }
  const isProductless = (k: number): boolean => {
    if (TRACE_KINDS[trace.kinds[k]!] !== 'rest' && TRACE_KINDS[trace.kinds[k]!] !== 'duty end') return false
    const zone = TRACE_KINDS[trace.kinds[k]!] === 'rest' ? trace.places[k]! : spec.stations[trace.places[k]!]!.zone
    return spec.stations.some((station) => station.zone === zone && station.load !== null) && !isLoaded(trace, trace.carriers[k]!)
  }
  for (const k of lastOf.values()) done.set(k, end.reason !== 'end of window' && !isProductless(k) ? true : null)
  return done
}

/** Whether the carrier has a product at the end of the trace. */
function isLoaded(trace: Trace, carrier: number): boolean {
  let loaded = false
  for (let k = 0; k < trace.length; k++) {
    if (trace.carriers[k] !== carrier) continue
    const kind = TRACE_KINDS[trace.kinds[k]!]
    if (kind === 'load') loaded = true
    if (kind === 'unload') loaded = false
  }
  return loaded
}
