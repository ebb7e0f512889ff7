/** Where each carrier was and what it did there, read off the events of a run. */
import { completeLine, type GivenLine, startZones, STORE, TRACE_KINDS, type TraceKind } from '@loopwright/line'
import type { TraceColumns } from '../runs/task.ts'

/** One carrier in one zone: from the start of the move in to the start of the move out. Seconds from time 0. */
export interface CarrierStay {
  readonly carrier: number
  /** index of the zone; STORE */
  readonly zone: number
  readonly enterSeconds: number
  /** at rest; null: it passed, or has not come to rest */
  readonly restSeconds: number | null
  /** work and releases, in order */
  readonly works: readonly (readonly [fromSeconds: number, toSeconds: number])[]
  /** nothing left to do; null: there still is, or it passed */
  readonly doneSeconds: number | null
  /** null: still there when the run ended */
  readonly leaveSeconds: number | null
}

interface Open {
  carrier: number
  zone: number
  enterSeconds: number
  restSeconds: number | null
  works: [number, number][]
  begun: number | null
  doneSeconds: number | null
}

/**
 * All stays of a run, by their end; those that last last.
 *
 * @param trace  all events of one run of this line
 * @example carrierStays((await traceRun(line, { replication: 0 }, { seed: '1', workers: 0 })).trace, line)[0].zone // => 0
 */
export function carrierStays(trace: TraceColumns, given: GivenLine): CarrierStay[] {
  const line = completeLine(given)
  const stays: CarrierStay[] = []
  const opened = (carrier: number, zone: number, enterSeconds: number): Open => {
    return { carrier, zone, enterSeconds, restSeconds: null, works: [], begun: null, doneSeconds: null }
  }
  const open = startZones(line).map((zone, carrier): Open => ({ ...opened(carrier, zone, 0), restSeconds: 0, doneSeconds: 0 }))
  const close = ({ begun, works, ...stay }: Open, leaveSeconds: number | null, now: number): void => {
    stays.push({ ...stay, works: begun === null ? works : [...works, [begun, now]], leaveSeconds })
  }
  for (let k = 0; k < trace.kinds.length; k += 1) {
    const carrier = trace.carriers[k]!
    if (carrier < 0) continue
    const now = trace.seconds[k]!
    const stay = open[carrier]!
    const event: TraceKind = TRACE_KINDS[trace.kinds[k]!]!
    if (event === 'move start') {
      close(stay, now, now)
      open[carrier] = opened(carrier, line.paths[trace.places[k]!]!.to, now)
    } else if (event === 'rest') {
      stay.restSeconds = now
      stay.doneSeconds = now
    } else if (event === 'duty start' || event === 'release start') {
      stay.begun = now
      stay.doneSeconds = null
    } else if (event === 'duty end' || event === 'release end') {
      stay.works.push([stay.begun!, now])
      stay.begun = null
      stay.doneSeconds = now
    } else if (event === 'change end' && trace.places[k] === stay.zone) stay.doneSeconds = now
  }
  const end = line.window.endSeconds
  for (const stay of open) close(stay, null, end)
  return stays.filter((stay) => stay.zone !== STORE || stay.leaveSeconds === null || stay.leaveSeconds > stay.enterSeconds)
}
