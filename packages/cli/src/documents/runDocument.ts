/** The document of a single `loopwright run --json`: all that the run tells, with names in place of indices. */
import { type LineSpec, type RunResult, STORE } from '@loopwright/line'
import type { Law } from '@loopwright/line/bounds'
import { ENGINE_VERSION } from '@loopwright/study'
import { lawDocument, type Source, scenarioHead } from './head.ts'
import type { TraceEvent } from './traceEvents.ts'
import { formHead } from './form.ts'

/** What the run came from, beside the run itself. */
export interface RunExtras {
  readonly law: Law | null
  /** null: not asked for */
  readonly trace: readonly TraceEvent[] | null
}

export function runDocument(source: Source, run: RunResult, extras: RunExtras): object {
  const { line, plan } = source.scenario
  const { seed, replication, window, end, stations, zones, carriers, ...measures } = run
  return {
    ...formHead('run'),
    scenario: scenarioHead(source),
    engineVersion: ENGINE_VERSION,
    seed,
    replications: 1,
    partial: false,
    plan: plan?.unitsPerWindow ?? null,
    window,
    law: lawDocument(extras.law, line),
    replication,
    end: endDocument(end, line),
    ...measures,
    stations: stations.map(({ seconds, ...station }, index) => ({
      ...station,
      title: line.stations[index]!.title,
      zone: line.zones[line.stations[index]!.zone]!.name,
      seconds,
    })),
    zones: zones.map(({ seconds, ...zone }) => ({ ...zone, seconds })),
    carriers: carriers.map(({ seconds, laps }, carrier) => ({ carrier, laps, seconds })),
    ...(extras.trace === null ? {} : { trace: extras.trace }),
  }
}

function endDocument(end: RunResult['end'], line: LineSpec): object {
  const name = (zone: number): string => (zone === STORE ? 'store' : line.zones[zone]!.name)
  return {
    reason: end.reason,
    atSeconds: end.atSeconds,
    waits: end.waits.map(([zone, waitsFor]) => ({ zone: name(zone), waitsFor: name(waitsFor) })),
    cycle: end.cycle.map(name),
    unmanned: end.unmanned.map(name),
  }
}
