/** Stopped time by the stops that the file names: one cause each, with its places, under the title that people know. */
import type { StopCause } from '@loopwright/charts'
import { type StopSource, stopSources } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import type { SweepCount } from '@loopwright/study'

/**
 * One cause for each stop of the file, with its places.
 *
 * @param scenario  titles, and which breakdown sources are one stop
 * @param stops     mean seconds and stops per window, by cause of the engine
 * @returns  stops of the file in its order, then safety stops and breaks
 * @example stopCauses({ line: scenario.line, stopEntries: [] }, [{ cause: 'break', seconds: 600, count: 1 }]) // => [{ cause: 'break', seconds: 600, count: 1 }]
 */
export function stopCauses({ line, stopEntries }: Pick<Scenario, 'line' | 'stopEntries'>, stops: SweepCount['stoppedBy']): StopCause[] {
  const titleAt = (place: string): string => line.stations.find(({ name }) => name === place)?.title ?? place
  const entries = stopEntries.flatMap(({ title, sources }): StopCause[] => {
    const places = sources.flatMap(({ source, place }) => {
      const found = stops.find(({ cause }) => cause === source)
      return found === undefined ? [] : [{ place: titleAt(place), seconds: found.seconds, count: found.count }]
    })
    if (places.length === 0) return []
    const sum = (of: 'seconds' | 'count'): number => places.reduce((total, each) => total + each[of], 0)
    return [{ cause: title, seconds: sum('seconds'), count: sum('count'), places }]
  })
  const grouped = new Set(stopEntries.flatMap(({ sources }) => sources.map(({ source }) => source)))
  const called = new Map(ofStations(line).map(({ name, title }) => [name, title]))
  const others = stops.filter(({ cause }) => !grouped.has(cause)).map((stop) => ({ ...stop, cause: called.get(stop.cause) ?? stop.cause }))
  return [...entries, ...others]
}

/**
 * What people call the stops of a line: those of the file by their titles, then the safety stops of its stations.
 *
 * @example stopNames({ line: scenario.line, stopEntries: [] }) // => []
 */
export const stopNames = ({ line, stopEntries }: Pick<Scenario, 'line' | 'stopEntries'>): string[] => [
  ...stopEntries.map(({ title }) => title),
  ...ofStations(line).map(({ title }) => title),
]

/** The stops that no entry of the file names, with what people call them. */
const ofStations = (line: Scenario['line']): { readonly name: string; readonly title: string }[] =>
  stopSources(line).flatMap((source) => {
    const title = titleOf(line, source)
    return title === null ? [] : [{ name: source.name, title }]
  })

/** null: an entry of the file says it. */
function titleOf({ stations }: Scenario['line'], source: StopSource): string | null {
  switch (source.kind) {
    case 'breakdown':
      return null
    case 'safety stop':
      return safetyTitle(stations[source.station]!.title)
  }
}

/** @param station  its title */
export const safetyTitle = (station: string): string => `safety stop at ${station}`
