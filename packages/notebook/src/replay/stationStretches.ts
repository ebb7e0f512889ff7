/** What each station did over a run, as the events tell it; the sums are those of the result. (MODEL.md §11) */
import { type LineSpec, type StationState, TRACE_KINDS } from '@loopwright/line'
import type { TraceColumns } from '@loopwright/study'
import type { Hold, StationStretch } from './replay.ts'

/** What is known of a station between two events. */
interface Doing {
  /** of the carrier at rest in its zone; −1: none */
  carrier: number
  /** work or release is in progress, or has begun and is held */
  works: boolean
  /** carriers that are pushed or pulled */
  handled: number
  /** carriers on their way in */
  coming: number
  /** one is on its way out, until clear */
  leaving: boolean
  /** what the carrier at rest does here next; null: nothing more */
  next: 'unload' | 'load' | 'work' | 'release' | null
  operators: number
}

/**
 * @param holds  stops and breaks of the run
 * @returns  for each station, from 0 to the end, without a gap; neighbours differ
 */
export function stationStretches(line: LineSpec, trace: TraceColumns, holds: readonly Hold[], endSeconds: number): StationStretch[][] {
  const doing = line.stations.map(
    (): Doing => ({ carrier: -1, works: false, handled: 0, coming: 0, leaving: false, next: null, operators: 0 }),
  )
  const stretches = line.stations.map((): (StationStretch & { to: number })[] => [])
  const covered = line.stations.map((_, index) => line.operators.some(({ stations }) => stations.includes(index)))
  const stationAt = new Map(line.stations.map(({ zone }, index) => [zone, index]))
  const ahead = nextOf(trace)
  const edges = [...new Set(holds.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b)

  const stateOf = (index: number): StationState => {
    const { zone, worksInBreaks, operatorsNeeded } = line.stations[index]!
    const { carrier, works, handled, coming, leaving, next, operators } = doing[index]!
    if (!worksInBreaks && current.some(({ isBreak }) => isBreak)) return 'break'
    const zoneHeld = current.some(({ zones }) => zones === null || zones.includes(zone))
    if (current.some(({ station }) => station === index) || (zoneHeld && !works)) return 'stopped'
    if (works) return 'working'
    if (handled > 0) return 'handling'
    if (carrier >= 0 && next !== null) {
      if (covered[index] && operators < operatorsNeeded) return 'waiting for operator'
      if (next === 'load') return 'waiting for product'
      if (next === 'unload') return 'waiting for receiver'
      return 'waiting for operator'
    }
    if (carrier >= 0) return 'blocked'
    return coming > 0 || leaving ? 'exchanging' : 'starved'
  }
  let known = 0
  let edge = 0
  let begun = 0
  /** stops and breaks that last at `known` */
  let current: Hold[] = []
  const look = (): void => {
    current = current.filter(({ to }) => to > known)
    for (; begun < holds.length && holds[begun]!.from <= known; begun += 1) if (holds[begun]!.to > known) current.push(holds[begun]!)
  }
  const close = (until: number): void => {
    if (until <= known) return
    for (; edge < edges.length && edges[edge]! <= known; edge += 1);
    while (known < until) {
      const cut = edge < edges.length && edges[edge]! < until ? edges[edge++]! : until
      look()
      for (const [index, own] of stretches.entries()) {
        const state = stateOf(index)
        const last = own.at(-1)
        if (last?.state === state) last.to = cut
        else own.push({ from: known, to: cut, state })
      }
      known = cut
    }
  }
  const hear = (k: number): void => {
    const place = trace.places[k]!
    const carrier = trace.carriers[k]!
    switch (TRACE_KINDS[trace.kinds[k]!]) {
      case 'move start': {
        const { from, to, manual } = line.paths[place]!
        const [out, into] = [stationAt.get(from), stationAt.get(to)]
        if (out !== undefined) Object.assign(doing[out]!, { carrier: -1, next: null, leaving: true })
        if (into !== undefined) doing[into]!.coming += 1
        if (manual !== null) doing[manual.station]!.handled += 1
        return
      }
      case 'clear': {
        const station = stationAt.get(place)
        if (station !== undefined) doing[station]!.leaving = false
        return
      }
      case 'rest': {
        const station = stationAt.get(place)
        if (station !== undefined) {
          doing[station]!.coming = Math.max(0, doing[station]!.coming - 1)
          Object.assign(doing[station]!, { carrier, next: ahead[k]! })
        }
        return
      }
      case 'duty start':
      case 'release start':
        doing[place]!.works = true
        return
      case 'duty end':
      case 'release end':
        Object.assign(doing[place]!, { works: false, next: ahead[k]! })
        return
      case 'operator there':
        doing[place]!.operators += 1
        return
      case 'operator free':
        doing[place]!.operators = Math.max(0, doing[place]!.operators - 1)
    }
  }
  // a carrier that is pushed is handled until it is at rest, one that passes until its next move
  const pushed = new Map<number, number>()
  for (let k = 0; k < trace.kinds.length; k += 1) {
    close(Math.min(trace.seconds[k]!, endSeconds))
    const kind = TRACE_KINDS[trace.kinds[k]!]
    const carrier = trace.carriers[k]!
    if (kind === 'rest' || kind === 'move start') {
      const station = pushed.get(carrier)
      if (station !== undefined) doing[station]!.handled -= 1
      pushed.delete(carrier)
    }
    if (kind === 'move start') {
      // a carrier that passes was on its way in as well
      const passed = stationAt.get(line.paths[trace.places[k]!]!.from)
      if (passed !== undefined && trace.details[k] === 1) doing[passed]!.coming = Math.max(0, doing[passed]!.coming - 1)
      const { manual } = line.paths[trace.places[k]!]!
      if (manual !== null) pushed.set(carrier, manual.station)
    }
    hear(k)
  }
  close(endSeconds)
  return stretches
}

/** For each event of a carrier: what its station does to it next, before it goes on. */
function nextOf(trace: TraceColumns): Doing['next'][] {
  const next = new Map<number, Doing['next']>()
  const found: Doing['next'][] = Array.from({ length: trace.kinds.length }, () => null)
  for (let k = trace.kinds.length - 1; k >= 0; k -= 1) {
    const carrier = trace.carriers[k]!
    if (carrier < 0) continue
    found[k] = next.get(carrier) ?? null
    const kind = TRACE_KINDS[trace.kinds[k]!]
    if (kind === 'duty start') next.set(carrier, (['unload', 'load', 'work'] as const)[trace.details[k]!]!)
    else if (kind === 'release start') next.set(carrier, 'release')
    else if (kind === 'move start') next.set(carrier, null)
  }
  return found
}
