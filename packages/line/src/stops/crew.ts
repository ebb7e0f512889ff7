/** Repair crews: where they are fewer than breakdowns, failures wait for one. (MODEL.md §7) */
import { drawInOrder } from '../work/draw.ts'
import type { LineSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import type { Crew } from '../state/stops.ts'
import { REPAIR_START } from '../telling/trace.ts'

export function makeCrew(spec: LineSpec): Crew {
  const sources = spec.breakdowns.length
  return {
    crews: spec.repairCrews ?? sources,
    crewsBusy: 0,
    crewDue: false,
    sourceWaits: new Uint8Array(sources),
    failedAt: new Float64Array(sources),
  }
}

/** The part is down: its repair waits for a crew, given out after all stops of this instant. */
export function waitForCrew(line: Line, source: number): void {
  const { crew } = line
  crew.failedAt[source] = line.now
  crew.sourceWaits[source] = 1
  crew.crewDue = true
}

/** A repair is over. */
export function freeCrew(line: Line): void {
  const { crew } = line
  crew.crewsBusy--
  crew.crewDue = true
}

/** Gives free crews to the failures that wait: the earliest first, then the lower index. */
export function assignCrews(line: Line): void {
  const { crew } = line
  crew.crewDue = false
  while (crew.crewsBusy < crew.crews) {
    let next = NONE
    for (let source = 0; source < line.sources; source++) {
      if (crew.sourceWaits[source] === 1 && (next === NONE || crew.failedAt[source]! < crew.failedAt[next]!)) next = source
    }
    if (next === NONE) return
    crew.crewsBusy++
    crew.sourceWaits[next] = 0
    startRepair(line, next)
  }
}

export function startRepair(line: Line, source: number): void {
  const { failures } = line
  if (line.trace !== null && line.hasCrews) line.trace.add(line.now, REPAIR_START, source, NONE, 0)
  drawInOrder(line, failures.sourceRepair[source]!, failures.repairStream[source]!)
  line.queue.times[source] = line.now + line.draws.drawn[0]!
  line.queue.schedule(source)
}
