/** Which zones have quick instants (quick.ts), found before a run. */
import { toGrid } from '@loopwright/kernel'
import type { Distribution } from '@loopwright/stats'
import { derivedTimes, distinctPaces, PACE_CLEAR, type Paces } from '../moves/motion.ts'
import { STOPS_ALWAYS, STOPS_PERHAPS } from '../state/graph.ts'
import type { Line } from '../state/line.ts'
import { neverHeld } from '../stops/stopLists.ts'
import { NONE, type PartList } from '../state/lists.ts'

/** What is known of a zone before a run, in one number each: a place less to look. */
export const QUICK = 1
export const TURNS = 2
export const EXIT_CLEAR = 4
export const AFTER_EXIT_CLEAR = 8
/** flags of those where no transfer has a say */
export const TRANSFER = TURNS + EXIT_CLEAR + AFTER_EXIT_CLEAR
export const DIVERTS = 16
export const MERGES = 32
/** carriers that leave the zone may meet others, or have a choice */
export const MEETS = 64
export const CLEARS_ELSEWHERE = 128

/** What is known of a path before a run. */
export const STOPS = 1
export const STOPS_BY_CARRIER = 2
export const PLAIN_CLEAR = 4
export const WATCHED = 8
export const NEVER_HELD = 16
export const INTO_STORE = 32
export const OUT_OF_STORE = 64

/**
 * By zone: QUICK if what happens in it and on the paths out of it may be handled here, with times known before the run, above 0 s, and no push or pull out of it; TURNS if its
 * transfer does; EXIT_CLEAR if a path leads out of a transfer that is entered only if its exit is clear, or into one; AFTER_EXIT_CLEAR if a zone before is one; DIVERTS if
 * its way out is looked up; MERGES if several paths lead into it; MEETS if it diverts, the next zone merges or is the store; CLEARS_ELSEWHERE if its clear is never handled here.
 * The last number is that of the store: QUICK if one path leads out of it, with times known before the run.
 */
export function quickZones(line: Line, { pathPace, paceSeconds }: Paces = knownPaces(line)): Uint8Array {
  const { store, graph } = line
  const { zoneChanges, changeSeconds, zoneRests } = line.transfers
  const { zoneStation } = line.work
  const { exitClear, onlyOut, outs, ins, pathFrom, pathTo, manualStation } = graph
  const handles = new Set(manualStation)
  const pathsOf = ({ first, items }: PartList, zone: number): number[] => [...items.subarray(first[zone]!, first[zone + 1]!)]
  return Uint8Array.from({ length: line.zones + 1 }, (_, zone) => {
    const out = pathsOf(outs, zone)
    const known = PACE_CLEAR + (zone === store ? 0 : 2)
    const times = out.flatMap((path) => [...paceSeconds.subarray(pathPace[path]!, pathPace[path]! + known)])
    const mayStart = out.every((path) => manualStation[path] === NONE && zoneRests[pathTo[path]!] === 0)
    if (zone === store) {
      const only = onlyOut[store]!
      const isQuick = only !== NONE && mayStart && exitClear[pathTo[only]!] === 0 && times.every((seconds) => seconds > 0)
      return (QUICK + MEETS) * Number(isQuick)
    }
    const into = pathsOf(ins, zone)
    const turns = zoneChanges[zone] === 1
    const diverts = onlyOut[zone] === NONE
    const nearExit = exitClear[zone] === 1 || out.some((path) => exitClear[pathTo[path]!] === 1)
    const afterExit = into.some((path) => exitClear[pathFrom[path]!] === 1)
    if (turns) times.push(...changeSeconds.subarray(2 * zone, 2 * zone + 2))
    const station = zoneStation[zone]!
    const isQuick =
      out.length > 0 &&
      times.every((seconds) => seconds > 0) &&
      mayStart &&
      zoneRests[zone] === 0 &&
      !(station !== NONE && handles.has(station)) &&
      !(turns && (station !== NONE || diverts)) &&
      !(nearExit && !graph.isLoop)
    return (
      QUICK * Number(isQuick) +
      TURNS * Number(turns) +
      EXIT_CLEAR * Number(nearExit) +
      AFTER_EXIT_CLEAR * Number(afterExit) +
      DIVERTS * Number(diverts) +
      MERGES * Number(into.length !== 1) +
      MEETS *
        Number(diverts || out.some((path) => pathTo[path] === store || ins.first[pathTo[path]! + 1]! - ins.first[pathTo[path]!]! > 1)) +
      CLEARS_ELSEWHERE * Number((turns && !isQuick) || (afterExit && !graph.isLoop))
    )
  })
}

/** By path: STOPS if it always ends in a stop, STOPS_BY_CARRIER if that is looked up; PLAIN_CLEAR if its clear needs a timer only where somebody waits or a stop holds it; WATCHED if a station watches its moves; NEVER_HELD if no stop
 * can hold them; INTO_STORE and OUT_OF_STORE. */
export function quickPaths({
  spec,
  paths,
  store,
  safety,
  graph: { pathFrom, pathStops, pathTo },
  moves: { moveSampler, clearIsPlain },
}: Line): Uint8Array {
  const isNeverHeld = neverHeld(spec)
  return Uint8Array.from(
    { length: paths },
    (_, path) =>
      STOPS * Number(pathStops[path] === STOPS_ALWAYS || moveSampler[path] !== NONE) +
      STOPS_BY_CARRIER * Number(pathStops[path] === STOPS_PERHAPS && moveSampler[path] === NONE) +
      PLAIN_CLEAR * clearIsPlain[path]! +
      WATCHED * Number(safety.pathSafety[path] !== NONE) +
      NEVER_HELD * isNeverHeld[path]! +
      INTO_STORE * Number(pathTo[path] === store) +
      OUT_OF_STORE * Number(pathFrom[path] === store),
  )
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

/**
 * Stations that a stop by the clock may hold at any time. Breaks are known ahead, and an operating clock runs while the station works, so that such stops begin at no other time:
 * quickStart.ts asks whether the station is held now.
 */
function stationsHeld({ spec, stations }: Line): Uint8Array {
  const held = new Uint8Array(stations)
  for (const { part, clock } of spec.breakdowns) if (part.kind === 'station' && clock === 'calendar') held[part.index] = 1
  return held
}

/**
 * What can be worked out of a start before its instant: it leads from one zone to the next, where no stop, transfer, meeting or choice has a say, so that who may start, when and
 * how depends on the carrier before alone; and it is no end of a lap, which is counted as it comes.
 */
function foresee(line: Line, flags: Uint8Array, pathFlags: Uint8Array, { pathPace, paceSeconds }: Paces): Pick<Quick, 'onward' | 'behind'> {
  const { paths, followsZones, collector, work } = line
  const { pathFrom, pathTo, onlyOut } = line.graph
  const held = stationsHeld(line)
  const isPlain = (zone: number): boolean =>
    (flags[zone]! & (QUICK + TRANSFER)) === QUICK && (work.zoneStation[zone] === NONE || held[work.zoneStation[zone]!] === 0)
  const isForeseen = (path: number): boolean => {
    const from = pathFrom[path]!
    const to = pathTo[path]!
    const asked = PLAIN_CLEAR + WATCHED + STOPS_BY_CARRIER + NEVER_HELD + INTO_STORE + OUT_OF_STORE
    const known = (pathFlags[path]! & asked) === PLAIN_CLEAR + NEVER_HELD
    return (
      known &&
      !followsZones &&
      onlyOut[from] === path &&
      from !== collector.lapZone &&
      isPlain(from) &&
      isPlain(to) &&
      (flags[to]! & MERGES) === 0
    )
  }
  const brakes = (path: number): boolean => {
    const pace = pathPace[path]!
    return paceSeconds[pace]! > paceSeconds[pace + 1]! && paceSeconds[pace + 2]! > paceSeconds[pace + 3]!
  }
  const onward = new Int32Array(paths).fill(NONE)
  const behind = new Int32Array(line.zones + 1).fill(NONE)
  for (let path = 0; path < paths; path++) {
    const next = onlyOut[pathTo[path]!]!
    if (
      next !== NONE &&
      (pathFlags[path]! & (PLAIN_CLEAR + WATCHED + NEVER_HELD)) === PLAIN_CLEAR + NEVER_HELD &&
      brakes(path) &&
      isForeseen(next)
    )
      onward[path] = next
    if (isForeseen(path)) behind[pathTo[path]!] = path
  }
  return { onward, behind }
}

/** Given back instead of a path: what the timer stands for is not for quick instants, and nothing has been done. */
export const NOT_QUICK = -3

/** What quick instants keep beside the columns of the line. */
export interface Quick {
  /** by place, see quickZones */
  readonly flags: Uint8Array
  /** by path, see quickPaths */
  readonly pathFlags: Uint8Array
  /** by place: the zone or store before its only path in; NONE */
  readonly before: Int32Array
  /** as in the line, and times that are given as constants too */
  readonly paces: Paces
  /** true: a stop may hold a zone */
  readonly mayHold: boolean
  /** by carrier: the instant at which it will be or is at rest, without a timer, where restIsKnown is 1 (quickRest.ts) */
  readonly restAt: Float64Array
  readonly restIsKnown: Uint8Array
  /** and the instant of the look before it, where that has not been told; infinitely early where it has */
  readonly lookAt: Float64Array
  /** by path: the one along which a carrier that looks at its end goes on, where that is known before its instant (foreseenPaths); NONE */
  readonly onward: Int32Array
  /** by place: the path along which a carrier comes that waits for it, where its start is known before its instant; NONE */
  readonly behind: Int32Array
  /** true: a stop or a break may hold a station */
  readonly asksStations: boolean
  /** seconds; end of the part of the run that is under way: what comes later is left to the next part */
  until: number
  /** how many those are */
  known: number
}

/** null: no zone of the line has quick instants. */
export function makeQuick(line: Line): Quick | null {
  const { carriers } = line
  const paces = knownPaces(line)
  const flags = quickZones(line, paces)
  if (flags.every((flag) => (flag & QUICK) === 0)) return null
  const pathFlags = quickPaths(line)
  return {
    flags,
    pathFlags,
    ...foresee(line, flags, pathFlags, paces),
    before: line.graph.zonePrevious,
    paces,
    mayHold: mayHold(line),
    asksStations: line.spec.breaks.length > 0 || line.spec.breakdowns.some(({ part }) => part.kind === 'station'),
    restAt: new Float64Array(carriers),
    restIsKnown: new Uint8Array(carriers),
    lookAt: new Float64Array(carriers),
    known: 0,
    until: Number.NaN,
  }
}

/** Time 0: a run before may have been left in the middle. */
export function resetQuick(quick: Quick): void {
  quick.restIsKnown.fill(0)
  quick.known = 0
}

/** Whether a stop can ever hold a zone. */
export function mayHold({ spec, safety }: Line): boolean {
  const stopsZones = spec.breakdowns.some(({ part }) => part.kind !== 'station') || safety.safetyStations.length > 0
  return stopsZones || (spec.breaks.length > 0 && !spec.conveyorDuringBreaks)
}
