/** Stops and breaks of one run, read off its events: where they stood, and what they held. (MODEL.md §7) */
import type { TimelinePause } from '@loopwright/charts'
import { type LineSpec, type StopSource, stopSources, TRACE_KINDS } from '@loopwright/line'
import { type Scenario, titleOf } from '@loopwright/scenario'
import type { TraceColumns } from '@loopwright/study'
import { safetyTitle } from '../study/stopCauses.ts'

/** of a scenario: its line, and what people call its stops */
type NamedStops = Pick<Scenario, 'line' | 'stopEntries' | 'titles' | 'variantGroups'>

const BEGIN = TRACE_KINDS.indexOf('stop begin')
const END = TRACE_KINDS.indexOf('stop end')

/**
 * All of a run, in the order of their beginnings; a stop that lasts ends with the run.
 *
 * @param trace  all events of one run of this line
 * @example tracePauses((await traceRun(scenario.line, { replication: 0 }, { seed: '1', workers: 0 })).trace, scenario).every(({ from, to }) => from <= to) // => true
 */
export function tracePauses(trace: TraceColumns, scenario: NamedStops): TimelinePause[] {
  const { line } = scenario
  const end = line.window.endSeconds
  const open = new Map<number, number>()
  const sources = stopSources(line)
  const pauses = line.breaks.map(({ startSeconds, lengthSeconds }) => breakOf(line, startSeconds, startSeconds + lengthSeconds))
  const close = (source: number, from: number, to: number): void => void pauses.push({ from, to, ...heldBy(scenario, sources[source]!) })
  for (let at = 0; at < trace.kinds.length; at += 1) {
    const source = trace.places[at]!
    if (trace.kinds[at] === BEGIN) open.set(source, trace.seconds[at]!)
    else if (trace.kinds[at] === END) {
      close(source, open.get(source) ?? 0, trace.seconds[at]!)
      open.delete(source)
    }
  }
  for (const [source, from] of open) close(source, from, end)
  return pauses.toSorted((a, b) => a.from - b.from)
}

function breakOf({ zones, stations, conveyorDuringBreaks }: LineSpec, from: number, to: number): TimelinePause {
  const work = stations.filter(({ worksInBreaks }) => !worksInBreaks).map(({ zone }) => zone)
  return { name: 'break', from, to, zones: null, work, moves: conveyorDuringBreaks ? [] : [...zones.keys()] }
}

function heldBy(scenario: NamedStops, source: StopSource): Omit<TimelinePause, 'from' | 'to'> {
  const { sections, stations, zones } = scenario.line
  const section = (index: number, name: string): Omit<TimelinePause, 'from' | 'to'> => {
    const held = sections[index]?.zones ?? []
    return { name, zones: held.length === zones.length ? null : held, work: [], moves: held }
  }
  if (source.kind === 'safety stop') {
    const { zone, title } = stations[source.station]!
    const index = sections.findIndex((each) => each.zones.includes(zone))
    return section(index, safetyTitle(title))
  }
  const name = titleOf(scenario, 'stop', source.name)
  const { kind, index } = source.breakdown.part
  if (kind === 'section') return section(index, name)
  const zone = kind === 'station' ? stations[index]!.zone : index
  return kind === 'station' ? { name, zones: [zone], work: [zone], moves: [] } : { name, zones: [zone], work: [], moves: [zone] }
}
