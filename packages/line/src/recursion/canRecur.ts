/** Which lines the recursion holds for. */
import { PACE_CLEAR } from '../moves/motion.ts'
import type { LineSpec, PathSpec, StationSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'

/**
 * True where nothing can freeze a move but the transfer that it leaves, where products are loaded and taken off at one station each, so that visits come in the
 * order of time, and where the line cannot stand still.
 */
export function canRecur(line: Line): boolean {
  const { spec, zones } = line
  if (!line.graph.isLoop || !isPlainLoop(spec)) return false
  if (spec.mix.kind === 'list') return false
  if (spec.breaks.length > 0 && !spec.conveyorDuringBreaks) return false
  if (spec.stations.filter((station) => station.load !== null).length > 1) return false
  if (spec.stations.filter((station) => station.unload !== null).length > 1) return false
  if (spec.carriers.count >= line.graph.exitClear.subarray(0, zones).reduce((places, is) => places + 1 - is, 0)) return false
  return spec.breakdowns.every(({ part, clock }) => {
    if (clock !== 'operating') return false
    if (part.kind === 'station') return true
    if (part.kind !== 'transfer' || line.work.zoneStation[part.index] !== -1) return false
    return clearsBeforeArrival(line, (part.index + zones - 1) % zones)
  })
}

/** The zone behind a move into a transfer is clear before the carrier stands on it, so that a stop of the transfer finds no clear under way. */
function clearsBeforeArrival(line: Line, path: number): boolean {
  if (line.moves.moveSampler[path] !== -1 || line.moves.clearSampler[path] !== -1) return false
  const pace = line.moves.pathPace[path]!
  return [0, 1].every((start) => line.moves.paceSeconds[pace + PACE_CLEAR + start]! <= line.moves.paceSeconds[pace + 2 * start]!)
}

/** One closed loop in zone order that takes every carrier, stations with operators of their own, products always there, good and taken off at once. */
function isPlainLoop({ zones, paths, stations, operators, supply, inspections, rework, repairCrews, carriers }: LineSpec): boolean {
  if (operators.length > 0 || inspections.length > 0 || rework.length > 0 || repairCrews !== null) return false
  if (supply.arrivals.kind !== 'always' || carriers.start === 'store' || paths.length !== zones.length) return false
  return paths.every((path, p) => path.from === p && path.to === (p + 1) % zones.length && takesAll(path)) && stations.every(isPlainStation)
}

function takesAll({ takes, manual }: PathSpec): boolean {
  return manual === null && takes.variants === null && takes.load === null && takes.rejected === null && takes.forStation === null
}

function isPlainStation({ accepts, supply, receiver, safetyStop }: StationSpec): boolean {
  return accepts !== 'rejected' && receiver === null && safetyStop === null && (supply === null || supply.arrivals.kind === 'always')
}
