/** Makes a line that shows a fault smaller, piece by piece, as long as the fault stays. */
import { isPlainLoop, type LineSpec, wholeLine } from '@loopwright/line'
import { fewerParts, withoutStation } from './smallerParts.ts'

/** Every line that is this one less a piece, or with one piece made plainer. */
function smallerLines(spec: LineSpec): LineSpec[] {
  const lines: LineSpec[] = []
  const { warmupSeconds, endSeconds } = spec.window
  if (warmupSeconds > 0) lines.push({ ...spec, window: { warmupSeconds: 0, endSeconds } })
  for (const share of [0.25, 0.5, 0.75, 0.9]) {
    const end = Math.floor(warmupSeconds + (endSeconds - warmupSeconds) * share)
    if (end > warmupSeconds && end < endSeconds) lines.push({ ...spec, window: { warmupSeconds, endSeconds: end } })
  }
  spec.breaks.forEach((_, index) => {
    lines.push({ ...spec, breaks: without(spec.breaks, index) })
  })
  spec.breakdowns.forEach((source, index) => {
    lines.push({ ...spec, breakdowns: without(spec.breakdowns, index) })
    lines.push({ ...spec, breakdowns: spec.breakdowns.with(index, { ...source, timeToFailureSeconds: { kind: 'constant', value: 10 } }) })
    lines.push({ ...spec, breakdowns: spec.breakdowns.with(index, { ...source, repairSeconds: { kind: 'constant', value: 3 } }) })
  })
  spec.stations.forEach((station, index) => {
    lines.push(withoutStation(spec, index))
    for (const duty of ['unload', 'load', 'work'] as const) {
      if (station[duty] === null) continue
      lines.push({ ...spec, stations: spec.stations.with(index, { ...station, [duty]: null }) })
      if (duty !== 'work' && station[duty].length > 0)
        lines.push({ ...spec, stations: spec.stations.with(index, { ...station, [duty]: [] }) })
      if (station[duty].length > 1)
        lines.push({ ...spec, stations: spec.stations.with(index, { ...station, [duty]: station[duty].slice(0, 1) }) })
      const plain = station[duty].map((task) => ({ ...task, seconds: task.seconds.map(() => ({ kind: 'constant' as const, value: 4 })) }))
      lines.push({ ...spec, stations: spec.stations.with(index, { ...station, [duty]: plain }) })
    }
    lines.push({ ...spec, stations: spec.stations.with(index, { ...station, releaseSeconds: { kind: 'constant', value: 0 } }) })
    lines.push({ ...spec, stations: spec.stations.with(index, { ...station, operatorsNeeded: 1, worksInBreaks: false }) })
  })
  spec.zones.forEach((zone, index) => {
    if (zone.transfer !== null) {
      lines.push({ ...spec, zones: spec.zones.with(index, { ...zone, transfer: { ...zone.transfer, enterOnlyIfExitClear: false } }) })
      const paths = spec.paths.map((path) => ({
        ...path,
        ...(path.from === index ? { fromPosition: 'low' as const } : {}),
        ...(path.to === index ? { toPosition: 'low' as const } : {}),
      }))
      const breakdowns = spec.breakdowns.filter((source) => source.part.kind !== 'transfer' || source.part.index !== index)
      lines.push({ ...spec, paths, breakdowns, zones: spec.zones.with(index, { ...zone, transfer: null }) })
    }
    if (zone.release === 'train') lines.push({ ...spec, zones: spec.zones.with(index, { ...zone, release: 'single' }) })
  })
  const given = { kind: 'constant', value: 2 } as const
  spec.paths.forEach((path, index) => {
    lines.push({ ...spec, paths: spec.paths.with(index, { ...path, moveSeconds: given, clearSeconds: given }) })
    if (path.moveSeconds === null)
      lines.push({ ...spec, paths: spec.paths.with(index, { ...path, accelerationMetresPerSecondSquared: null }) })
  })
  if (spec.mix.kind !== 'pattern') lines.push({ ...spec, mix: { kind: 'pattern', sequence: [0] } })
  if (spec.zones.length > 3 && isPlainLoop(spec))
    for (let zone = 0; zone < spec.zones.length; zone++) lines.push(...withoutZone(spec, zone))
  const { count, start } = spec.carriers
  if (count > 1 && typeof start !== 'string') {
    for (let carrier = 0; carrier < count; carrier++)
      lines.push({ ...spec, carriers: { ...spec.carriers, count: count - 1, start: without(start, carrier) } })
  } else if (count > 1) lines.push({ ...spec, carriers: { ...spec.carriers, count: count - 1 } })
  lines.push(...fewerParts(spec))
  const before = JSON.stringify(spec)
  return lines.filter((line) => JSON.stringify(line) !== before)
}

function without<T>(list: readonly T[], index: number): T[] {
  return list.filter((_, other) => other !== index)
}

/** Takes out a zone that no station, breakdown or named start needs. */
function withoutZone(spec: LineSpec, zone: number): LineSpec[] {
  const { start, count } = spec.carriers
  const needed =
    spec.stations.some((station) => station.zone === zone) ||
    spec.breakdowns.some(({ part }) => (part.kind === 'zone' || part.kind === 'transfer') && part.index === zone) ||
    (typeof start !== 'string' && start.includes(zone)) ||
    count >= spec.zones.length - 1
  if (needed) return []
  const at = (old: number): number => (old > zone ? old - 1 : old)
  const zones = without(spec.zones, zone)
  const paths = without(spec.paths, zone).map((path, index, all) => {
    const to = (index + 1) % all.length
    return { ...path, from: index, to, toPosition: path.to === zone ? spec.paths[zone]!.toPosition : path.toPosition }
  })
  return [
    {
      ...spec,
      zones,
      sections: wholeLine(zones.length),
      paths,
      stations: spec.stations.map((station) => ({ ...station, zone: at(station.zone) })),
      breakdowns: spec.breakdowns.map((source) =>
        source.part.kind === 'zone' || source.part.kind === 'transfer'
          ? { ...source, part: { ...source.part, index: at(source.part.index) } }
          : source,
      ),
      carriers: { ...spec.carriers, start: typeof start === 'string' ? start : start.map(at) },
    },
  ]
}

/** The smallest line found that still shows the fault. A line on which the look for it throws does not show it. */
export function smallest(spec: LineSpec, showsFault: (spec: LineSpec) => boolean): LineSpec {
  const shows = (line: LineSpec): boolean => {
    try {
      return showsFault(line)
    } catch {
      return false
    }
  }
  let least = spec
  for (;;) {
    const next = smallerLines(least).find(shows)
    if (next === undefined) return least
    least = next
  }
}
