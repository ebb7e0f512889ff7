/** Which lines and zones have quick instants (quick.ts), found before a run. */
import { toGrid } from '@loopwright/kernel'
import type { Distribution } from '@loopwright/stats'
import { derivedTimes, distinctPaces, PACE_CLEAR, type Paces } from '../moves/motion.ts'
import { type Line, NONE, STOPS_ALWAYS, STOPS_PERHAPS } from '../instant/state.ts'

/** Whether the line has quick instants: a closed loop with operators at their stations, products always there or at an end, no inspection and no operating clock of zones. */
export function hasQuickInstants(line: Line): boolean {
  return line.isLoop && !line.hasCalls && !line.hasRejects && !line.followsZones && line.operators === 0
}

/** What is known of a zone and the path out of it before a run, in one number each: a place less to look. */
export const QUICK = 1
export const STOPS = 2
export const PLAIN_CLEAR = 4
export const TURNS = 8
export const EXIT_CLEAR = 16
export const AFTER_EXIT_CLEAR = 32
/** flags of those where no transfer has a say */
export const TRANSFER = TURNS + EXIT_CLEAR + AFTER_EXIT_CLEAR

/**
 * By zone: QUICK if what happens in it and on the path out of it may be handled here, with times known before the run, above 0 s, and no safety stop; STOPS if the path out always
 * ends in a stop; PLAIN_CLEAR if its clear needs a timer only where somebody waits; TURNS if its transfer does; EXIT_CLEAR if the path out leads out of a
 * transfer that is entered only if its exit is clear, or into one; AFTER_EXIT_CLEAR if the zone before is one.
 */
export function quickZones(line: Line, { pathPace, paceSeconds }: Paces = knownPaces(line)): Uint8Array {
  const { zoneChanges, zoneStation, exitClear, changeSeconds, moveSampler, pathStops, safety } = line
  return Uint8Array.from({ length: line.zones }, (_, zone) => {
    const turns = zoneChanges[zone] === 1
    const times = [...paceSeconds.subarray(pathPace[zone]!, pathPace[zone]! + PACE_CLEAR + 2)]
    if (turns) times.push(...changeSeconds.subarray(2 * zone, 2 * zone + 2))
    const isKnown = times.every((seconds) => seconds > 0)
    const isPlain = pathStops[zone] !== STOPS_PERHAPS && safety.pathSafety[zone] === NONE && !(turns && zoneStation[zone] !== NONE)
    return (
      QUICK * Number(isKnown && isPlain && line.zoneRests[zone] === 0) +
      STOPS * Number(pathStops[zone] === STOPS_ALWAYS || moveSampler[zone] !== NONE) +
      PLAIN_CLEAR * line.clearIsPlain[zone]! +
      TURNS * Number(turns) +
      EXIT_CLEAR * Number(exitClear[zone]! + exitClear[line.zoneNext[zone]!]! > 0) +
      AFTER_EXIT_CLEAR * exitClear[line.zonePrevious[zone]!]!
    )
  })
}

/** The times of all moves and clears, derived or given as constants; not a number where they are drawn. */
function knownPaces({ spec, paths }: Line): Paces {
  const { move, clear } = derivedTimes(spec)
  for (let path = 0; path < paths; path++) {
    const { moveSeconds, clearSeconds } = spec.paths[path]!
    if (moveSeconds !== null) move.fill(constantOf(moveSeconds), 4 * path, 4 * path + 4)
    if (clearSeconds !== null) clear.fill(constantOf(clearSeconds === 'move' ? moveSeconds! : clearSeconds), 2 * path, 2 * path + 2)
  }
  return distinctPaces({ move, clear })
}

const constantOf = (time: Distribution): number => (time.kind === 'constant' ? toGrid(time.value) : Number.NaN)

/** What quick instants keep beside the columns of the line. */
export interface Quick {
  /** by zone, see quickZones */
  readonly flags: Uint8Array
  /** as in the line, and times that are given as constants too */
  readonly paces: Paces
  /** true: a stop may hold a zone */
  readonly mayHold: boolean
  /** by carrier: the instant at which it will be or is at rest, without a timer, where restIsKnown is 1 (quickRest.ts) */
  readonly restAt: Float64Array
  readonly restIsKnown: Uint8Array
  /** how many those are */
  known: number
}

/** null: the line has no quick instants. */
export function makeQuick(line: Line): Quick | null {
  if (!hasQuickInstants(line)) return null
  const { carriers } = line
  const paces = knownPaces(line)
  return {
    flags: quickZones(line, paces),
    paces,
    mayHold: mayHold(line),
    restAt: new Float64Array(carriers),
    restIsKnown: new Uint8Array(carriers),
    known: 0,
  }
}

/** Whether a stop can ever hold a zone. */
export function mayHold({ spec, safety }: Line): boolean {
  const stopsZones = spec.breakdowns.some(({ part }) => part.kind !== 'station') || safety.safetyStations.length > 0
  return stopsZones || (spec.breaks.length > 0 && !spec.conveyorDuringBreaks)
}
