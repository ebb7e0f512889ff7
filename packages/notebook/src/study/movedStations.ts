import type { Scenario } from '@loopwright/scenario'

/**
 * The scenario with stations in other zones; what belongs to a station goes with it.
 *
 * @param zones  name of the new zone by name of the station; the others stay
 * @throws RangeError  if a station or zone is not known, is a transfer, or would hold two stations
 */
export function movedStations(scenario: Scenario, zones: Readonly<Record<string, string>>): Scenario {
  const { line } = scenario
  const names = line.stations.map(({ name }) => name)
  for (const name of Object.keys(zones)) {
    if (!names.includes(name)) throw new RangeError(`there is no station called "${name}"; there are ${names.join(', ')}`)
  }
  const stations = line.stations.map((station) => {
    const wanted = zones[station.name]
    if (wanted === undefined) return station
    const zone = line.zones.findIndex(({ name }) => name === wanted)
    if (zone < 0) throw new RangeError(`there is no zone called "${wanted}"`)
    if (line.zones[zone]!.transfer !== null) throw new RangeError(`${wanted} is a transfer: ${station.name} cannot stand there`)
    return { ...station, zone }
  })
  for (const [index, { name, zone }] of stations.entries()) {
    const other = stations.findIndex((each) => each.zone === zone)
    if (other < index) throw new RangeError(`${stations[other]!.name} and ${name} would both stand in ${line.zones[zone]!.name}`)
  }
  return { ...scenario, line: { ...line, stations } }
}
