/** What operators who serve several stations let through: each alone, and those together who share stations. (MODEL.md §5, §6) */
import { listWords } from '../words/listWords.ts'
import type { LineSpec } from '../spec.ts'
import { type Flows, otherUse, unitUse } from './flows.ts'
import type { Use } from './leastUse.ts'
import { type Limit, limitOf } from './limit.ts'
import { pathTimes } from './pathTimes.ts'
import type { Stay } from './productWalk.ts'
import { stopShares } from './stopShares.ts'
import { workingSeconds } from './workingSeconds.ts'

/** up to so many operators all sets of them are looked at */
const SETS_OF = 8

/**
 * For every set of operators: the work that nobody else can do must fit into their time.
 *
 * @see Hall, On representatives of subsets (1935): the marriage bound, here with times; from memory
 */
export function operatorLimits(spec: LineSpec, flows: Flows): Limit[] {
  const covers = spec.stations.map((_, station) =>
    spec.operators.flatMap(({ stations }, index) => (stations.includes(station) ? [index] : [])),
  )
  const times = pathTimes(spec)
  const stops = spec.stations.map((_, station) => stopShares(spec, station))
  return operatorSets(spec, covers).flatMap((set) => {
    const limit = setLimit(spec, flows, set, { covers, times, stops })
    return limit === null ? [] : [limit]
  })
}

/** What is the same for every set. */
interface Known {
  /** operators of each station */
  readonly covers: readonly (readonly number[])[]
  readonly times: ReturnType<typeof pathTimes>
  readonly stops: readonly ReturnType<typeof stopShares>[]
}

function setLimit(spec: LineSpec, flows: Flows, set: readonly number[], { covers, times, stops }: Known): Limit | null {
  /** how many of the set a station keeps whenever it works */
  const forced = (station: number, needed: number): number => {
    const cover = covers[station]!
    if (cover.length === 0) return 0
    return Math.max(0, Math.min(needed, cover.length) - cover.filter((operator) => !set.includes(operator)).length)
  }
  const keeps = spec.stations.map(({ operatorsNeeded }, station) => forced(station, operatorsNeeded))
  const handles = spec.paths.map(({ manual }) => (manual === null ? 0 : forced(manual.station, 1)))
  const held = (stay: Stay, proven: boolean): number =>
    proven && stops[stay.station]!.mayTie ? 0 : stay.workSeconds * stops[stay.station]!.perWork
  const work: Use = { stay: (stay) => keeps[stay.station]! * stay.workSeconds }
  const release: Use = { stay: (stay) => keeps[stay.station]! * stay.releaseSeconds }
  const stopped: Use = { stay: (stay) => keeps[stay.station]! * held(stay, false) }
  const handling: Use = { way: (path) => handles[path]! * times[path]!.move[0]! }
  const whole = (proven: boolean): Use => ({
    ...handling,
    stay: (stay) => keeps[stay.station]! * (stay.workSeconds + stay.releaseSeconds + held(stay, proven)),
  })
  const least = unitUse(flows, whole(false))
  const visited = [...keeps.keys()]
    .filter((station) => keeps[station]! > 0)
    .map((station) => ({ station, visits: otherUse(flows, { stay: countAt(station) }, least) }))
    .filter(({ visits }) => visits > 0)
  const served = visited.map(({ station }) => station)
  const handlingSeconds = otherUse(flows, handling, least)
  if (least.perUnit <= 0 || (served.length < 2 && handlingSeconds === 0)) return null
  const walkingSeconds =
    set.length === 1
      ? walking(
          spec,
          served,
          visited.map(({ visits }) => visits),
        )
      : 0
  const net = workingSeconds(spec)
  // repairs go on in breaks
  const proven = stops.some(({ perWork }, station) => keeps[station]! > 0 && perWork > 0)
    ? Math.min(
        net / unitUse(flows, { ...handling, stay: (stay) => keeps[stay.station]! * (stay.workSeconds + stay.releaseSeconds) }).perUnit,
        spec.breaks.length === 0 ? net / unitUse(flows, whole(true)).perUnit : Infinity,
      )
    : net / least.perUnit
  return limitOf(spec, {
    kind: 'operator',
    name: listWords(set.map((operator) => spec.operators[operator]!.name)),
    stations: served,
    operators: set,
    secondsPerUnit: least.perUnit + walkingSeconds,
    availableSeconds: net * set.length,
    provenPerWindow: proven * set.length,
    reasons: [
      ...(walkingSeconds > 0 ? (['walking from station to station in turn'] as const) : []),
      ...(served.some((station) => stops[station]!.perWork > 0) ? (['breakdowns'] as const) : []),
    ],
    parts: {
      workSeconds: otherUse(flows, work, least),
      releaseSeconds: otherUse(flows, release, least),
      stoppedSeconds: otherUse(flows, stopped, least),
      handlingSeconds,
      walkingSeconds,
    },
  })
}

const countAt =
  (station: number) =>
  (stay: Stay): number =>
    stay.station === station ? 1 : 0

/** Walking per unit of one operator who serves its stations in turn, as the products come; rarer visits are walks there and back. */
function walking(spec: LineSpec, stations: readonly number[], visits: readonly number[]): number {
  const walk = (a: number, b: number): number =>
    spec.walks.find(({ between }) => between.includes(a) && between.includes(b) && a !== b)?.seconds ?? 0
  const often = Math.max(...visits)
  const turn = stations.filter((_, index) => visits[index]! >= often * 0.5)
  const round = turn.length < 2 ? 0 : turn.reduce((sum, station, index) => sum + walk(station, turn[(index + 1) % turn.length]!), 0)
  const rare = stations.reduce((sum, station, index) => {
    if (turn.includes(station)) return sum
    const near = Math.min(...turn.map((each) => walk(station, each)))
    return sum + visits[index]! * 2 * near
  }, 0)
  return Math.min(1, often) * round + rare
}

/** Sets of operators whom something may force to work together. */
function operatorSets(spec: LineSpec, covers: readonly (readonly number[])[]): number[][] {
  const all = [...spec.operators.keys()]
  if (all.length <= SETS_OF) {
    return Array.from({ length: 2 ** all.length - 1 }, (_, mask) => all.filter((operator) => ((mask + 1) >> operator) & 1)).filter((set) =>
      isJoined(set, covers),
    )
  }
  const sets = [...all.map((operator) => [operator]), ...covers.filter((cover) => cover.length > 1).map((cover) => [...cover]), all]
  return [...new Map(sets.map((set) => [set.join(), set])).values()]
}

/** Whether stations that they alone serve join them: otherwise each part of the set says more. */
function isJoined(set: readonly number[], covers: readonly (readonly number[])[]): boolean {
  const joined = new Set(set.slice(0, 1))
  for (let grown = true; grown; ) {
    grown = false
    for (const cover of covers) {
      const inside = cover.filter((operator) => set.includes(operator))
      if (!inside.some((operator) => joined.has(operator))) continue
      for (const operator of inside) {
        if (joined.has(operator)) continue
        joined.add(operator)
        grown = true
      }
    }
  }
  return joined.size === set.length
}
