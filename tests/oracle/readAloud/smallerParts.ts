/** The pieces that lines which are no plain loop have, taken away or made plainer one at a time. */
import {
  isPlainLoop,
  type LineSpec,
  type PathSpec,
  PLAIN_LINE,
  PLAIN_PATH,
  PLAIN_STATION,
  PLAIN_ZONE,
  type StationSpec,
} from '@loopwright/line'

/** Every line that has one such piece less. */
export function fewerParts(spec: LineSpec): LineSpec[] {
  return [...fewerPaths(spec), ...plainerZones(spec), ...fewerPeople(spec), ...plainerStations(spec), ...lastZoneLess(spec)]
}

function fewerPaths(spec: LineSpec): LineSpec[] {
  const lines: LineSpec[] = []
  const withPath = (index: number, path: PathSpec): void => void lines.push({ ...spec, paths: spec.paths.with(index, path) })
  spec.paths.forEach((path, index) => {
    if (!isPlainLoop(spec) && spec.paths.length > 1) lines.push({ ...spec, paths: spec.paths.filter((_, other) => other !== index) })
    for (const key of ['variants', 'load', 'rejected', 'forStation'] as const) {
      if (path.takes[key] !== null) withPath(index, { ...path, takes: { ...path.takes, [key]: null } })
    }
    if (path.manual !== null) withPath(index, { ...path, manual: PLAIN_PATH.manual })
  })
  return lines
}

function plainerZones(spec: LineSpec): LineSpec[] {
  const lines: LineSpec[] = []
  spec.zones.forEach((zone, index) => {
    if (zone.divert !== 'first') lines.push({ ...spec, zones: spec.zones.with(index, { ...zone, divert: 'first' }) })
    if (zone.merge.kind !== 'waiting') lines.push({ ...spec, zones: spec.zones.with(index, { ...zone, merge: PLAIN_ZONE.merge }) })
  })
  spec.sections.forEach((section, index) => {
    for (const zone of section.zones) {
      lines.push({ ...spec, sections: spec.sections.with(index, { ...section, zones: section.zones.filter((other) => other !== zone) }) })
    }
  })
  return lines
}

function fewerPeople(spec: LineSpec): LineSpec[] {
  const lines: LineSpec[] = []
  if (spec.repairCrews !== null) lines.push({ ...spec, repairCrews: null })
  spec.operators.forEach((operator, index) => {
    lines.push({ ...spec, operators: spec.operators.filter((_, other) => other !== index) })
    if (operator.start !== operator.stations[0])
      lines.push({ ...spec, operators: spec.operators.with(index, { ...operator, start: operator.stations[0]! }) })
    for (const station of operator.stations) {
      const stations = operator.stations.filter((other) => other !== station)
      if (stations.length > 0) lines.push({ ...spec, operators: spec.operators.with(index, { ...operator, stations }) })
    }
  })
  if (spec.walks.length > 0) lines.push({ ...spec, walks: [] })
  if (spec.supply.arrivals.kind !== 'always') lines.push({ ...spec, supply: PLAIN_LINE.supply })
  for (const key of ['inspections', 'rework'] as const) {
    spec[key].forEach((_, index) => void lines.push({ ...spec, [key]: spec[key].filter((__, other) => other !== index) }))
  }
  return lines
}

function plainerStations(spec: LineSpec): LineSpec[] {
  const lines: LineSpec[] = []
  spec.stations.forEach((station, index) => {
    for (const key of ['operatorsNeeded', 'accepts', 'supply', 'receiver', 'safetyStop'] as const) {
      if (key === 'operatorsNeeded' && station.worksInBreaks) continue
      const plain = { ...station, [key]: PLAIN_STATION[key] } as StationSpec
      if (station[key] !== PLAIN_STATION[key]) lines.push({ ...spec, stations: spec.stations.with(index, plain) })
    }
  })
  return lines
}

/** Without the last zone, where nothing needs it. */
function lastZoneLess(spec: LineSpec): LineSpec[] {
  const last = spec.zones.length - 1
  const { start, count } = spec.carriers
  const needed =
    isPlainLoop(spec) ||
    last < 2 ||
    spec.stations.some(({ zone }) => zone === last) ||
    spec.breakdowns.some(({ part }) => (part.kind === 'zone' || part.kind === 'transfer') && part.index === last) ||
    (typeof start === 'string' ? start !== 'store' && count > last - 1 : start.includes(last))
  if (needed) return []
  return [
    {
      ...spec,
      zones: spec.zones.slice(0, last),
      paths: spec.paths.filter(({ from, to }) => from !== last && to !== last),
      sections: spec.sections.map((section) => ({ ...section, zones: section.zones.filter((zone) => zone !== last) })),
    },
  ]
}

/** Station `gone` is no more: those who name it name nobody, and the others move up. */
export function withoutStation(spec: LineSpec, gone: number): LineSpec {
  const at = (station: number): number => (station > gone ? station - 1 : station)
  return {
    ...spec,
    stations: spec.stations.filter((_, index) => index !== gone),
    breakdowns: spec.breakdowns
      .filter(({ part }) => part.kind !== 'station' || part.index !== gone)
      .map((source) =>
        source.part.kind === 'station' ? { ...source, part: { kind: 'station' as const, index: at(source.part.index) } } : source,
      ),
    paths: spec.paths
      .filter(({ manual, takes }) => manual?.station !== gone && takes.forStation !== gone)
      .map((path) => ({
        ...path,
        manual: path.manual === null ? null : { ...path.manual, station: at(path.manual.station) },
        takes: { ...path.takes, forStation: path.takes.forStation === null ? null : at(path.takes.forStation) },
      })),
    operators: spec.operators
      .map((operator) => ({
        ...operator,
        stations: operator.stations.filter((station) => station !== gone).map(at),
        start: operator.start === gone ? 0 : at(operator.start),
      }))
      .filter(({ stations }) => stations.length > 0),
    walks: spec.walks
      .filter(({ between }) => !between.includes(gone))
      .map((walk) => ({ ...walk, between: [at(walk.between[0]), at(walk.between[1])] })),
  }
}
