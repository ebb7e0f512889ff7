/** What each station lets through, and stations that share their work together. */
import { listWords } from '../words/listWords.ts'
import type { LineSpec } from '../spec.ts'
import { tasksOf } from '../stationTasks.ts'
import { stationWords } from '../words/stationWords.ts'
import { type Flows, otherUse, unitUse } from './flows.ts'
import type { Law } from './law.ts'
import { type Limit, type LimitReason, limitOf } from './limit.ts'
import { pathTimes } from './pathTimes.ts'
import type { Stay } from './productWalk.ts'
import { plainSeconds, proofs, type StayTimes, stayTimes, stopFactor, stoppedSeconds } from './stayTimes.ts'

type StayUse = (stay: Stay) => number

interface StationTimes {
  readonly times: StayTimes
  /** an estimate; everywhere else 0 */
  readonly seconds: StayUse
  readonly proofs: readonly { readonly seconds: StayUse; readonly availableSeconds: number }[]
  /** one of its stays; null: no product comes here */
  readonly sample: Stay | null
}

/** One limit for each station that every product, or every product of a variant, has to pass; and one for those that share tasks. */
export function stationLimits(spec: LineSpec, flows: Flows, lineLaw: Law | null): Limit[] {
  const paths = pathTimes(spec)
  const all = spec.stations.map((_, station): StationTimes => {
    const times = stayTimes(spec, station, paths)
    const stays = flows.flows.flatMap(({ graph }) =>
      graph.nodes.flatMap(({ stay }) => (stay !== null && stay.station === station ? [stay] : [])),
    )
    const here =
      (use: StayUse): StayUse =>
      (stay) =>
        stay.station === station ? use(stay) : 0
    const pace = unitUse(flows, { stay: here((stay) => plainSeconds(times, stay)) }).perUnit
    const factor = stopFactor(times, movingShare(spec, station, paths, pace))
    const longest = Math.max(0, ...stays.map((stay) => stay.workSeconds + stay.releaseSeconds))
    return {
      times,
      seconds: here((stay) => (plainSeconds(times, stay) + stoppedSeconds(times, stay)) * factor),
      proofs: proofs(spec, times, longest).map((proof) => ({ ...proof, seconds: here(proof.seconds) })),
      sample: stays[0] ?? null,
    }
  })
  const single = all.flatMap((one, station) => {
    const limit = singleLimit(spec, flows, lineLaw, station, one)
    return limit === null ? [] : [limit]
  })
  const groups = sharedGroups(spec, flows).flatMap((stations) => {
    const limit = groupLimit(spec, flows, stations, all)
    return limit === null ? [] : [limit]
  })
  return [...single, ...groups]
}

function singleLimit(spec: LineSpec, flows: Flows, lineLaw: Law | null, station: number, one: StationTimes): Limit | null {
  const { times, seconds } = one
  if (one.sample === null) return null
  const proven = Math.min(...one.proofs.map((proof) => proof.availableSeconds / unitUse(flows, { stay: proof.seconds }).perUnit))
  const least = unitUse(flows, { stay: seconds })
  const part = (use: StayUse): number => otherUse(flows, { stay: (stay) => (stay.station === station ? use(stay) : 0) }, least)
  const workSeconds = part((stay) => stay.workSeconds)
  const releaseSeconds = part((stay) => stay.releaseSeconds)
  const plain = part((stay) => plainSeconds(times, stay))
  // on one loop every carrier comes by, also those that have nothing to do here
  const byLaw =
    lineLaw === null || lineLaw.unitsPerLap === 0 ? 0 : lineLaw.exchanges[spec.stations[station]!.zone]!.seconds / lineLaw.unitsPerLap
  const base = least.perUnit > 0 ? Math.max(plain, byLaw) : plain
  const secondsPerUnit = plain > 0 ? (least.perUnit * base) / plain : 0
  return limitOf(spec, {
    kind: 'station',
    name: stationWords(spec.stations[station]!),
    stations: [station],
    secondsPerUnit,
    availableSeconds: times.workingSeconds,
    provenPerWindow: lawIsProof(lineLaw, times) && byLaw >= base ? times.workingSeconds / byLaw : proven,
    reasons: reasonsOf(spec, lineLaw, times),
    parts: { workSeconds, releaseSeconds, exchangeSeconds: base - workSeconds - releaseSeconds, stoppedSeconds: secondsPerUnit - base },
  })
}

const lawIsProof = (lineLaw: Law | null, { stops }: StayTimes): boolean =>
  lineLaw?.exact === true && stops.safetySeconds === 0 && stops.byClock.length + stops.bySection.length === 0

function reasonsOf(spec: LineSpec, lineLaw: Law | null, { stops, leastMoveSeconds, moveSeconds, breaks }: StayTimes): LimitReason[] {
  return [
    ...(lineLaw === null ? [] : lineLaw.estimateReasons.filter((reason) => reason !== 'breakdowns' && reason !== 'breaks')),
    ...(lineLaw === null && moveSeconds > leastMoveSeconds ? (['ramps'] as const) : []),
    ...(stops.byClock.length > 0 ? (['stops that come by the clock'] as const) : []),
    ...(stops.bySection.length > 0 || stops.safetySeconds > 0 ? (['stops of a section'] as const) : []),
    ...(stops.mayTie ? (['stops of equal times'] as const) : []),
    ...(breaks.length > 0 && spec.conveyorDuringBreaks ? (['breaks'] as const) : []),
  ]
}

/** The share of time in which something moves in the sections of the station's zone, at a pace: every zone by itself. */
function movingShare(spec: LineSpec, station: number, times: ReturnType<typeof pathTimes>, pace: number): number {
  const zones = spec.sections.find((section) => section.zones.includes(spec.stations[station]!.zone))?.zones ?? []
  if (pace <= 0) return 1
  const firstInto = new Map(spec.paths.map(({ to }, path) => [to, path] as const).reverse())
  const still = zones.reduce((product, zone) => {
    const into = firstInto.get(zone)
    return into === undefined ? product : product * Math.max(0, 1 - times[into]!.move[0]! / pace)
  }, 1)
  return 1 - still
}

/** Stations that share a task, where a product has a choice between ways or loads. */
function sharedGroups(spec: LineSpec, { flows }: Flows): number[][] {
  const choice = flows.some(
    ({ graph }) => graph.starts.length > 1 || graph.nodes.some(({ outcomes }) => outcomes.some(({ ways }) => ways.length > 1)),
  )
  if (!choice) return []
  const visited = new Set(flows.flatMap(({ graph }) => graph.nodes.flatMap(({ stay }) => (stay === null ? [] : [stay.station]))))
  const groups: number[][] = []
  spec.tasks.forEach((_, task) => {
    const group = [...visited].filter((station) => tasksOf(spec.stations[station]!).some((each) => each.task === task))
    if (group.length > 1) groups.push(group.sort((a, b) => a - b))
  })
  for (const duty of ['load', 'unload'] as const) {
    const group = [...visited].filter((station) => spec.stations[station]![duty] !== null).sort((a, b) => a - b)
    if (group.length > 1) groups.push(group)
  }
  return [...new Map(groups.map((group) => [group.join(), group])).values()]
}

function groupLimit(spec: LineSpec, flows: Flows, stations: readonly number[], all: readonly StationTimes[]): Limit | null {
  // shares of the window that a unit takes of each station; at the best split the largest is as small as it can be
  const shareOf =
    ({ seconds, availableSeconds }: { seconds: StayUse; availableSeconds: number }): StayUse =>
    (stay) =>
      availableSeconds > 0 ? seconds(stay) / availableSeconds : 0
  const members = stations.map((station) => all[station]!)
  const split = bestSplit(
    flows,
    members.map(({ seconds, times }) => shareOf({ seconds, availableSeconds: times.workingSeconds })),
  )
  const provenSplit = bestSplit(
    flows,
    members.map(({ proofs: known, sample }) => {
      const shares = known.map(shareOf)
      // any of them holds; of these the one that takes most
      return shares.reduce((most, each) => (each(sample!) > most(sample!) ? each : most))
    }),
  )
  if (split === 0) return null
  const availableSeconds = stations.reduce((sum, station) => sum + all[station]!.times.workingSeconds, 0)
  return limitOf(spec, {
    kind: 'station',
    name: listWords(stations.map((station) => stationWords(spec.stations[station]!))),
    stations,
    secondsPerUnit: availableSeconds * split,
    availableSeconds,
    provenPerWindow: provenSplit > 0 ? 1 / provenSplit : null,
    reasons: stations.flatMap((station) => reasonsOf(spec, null, all[station]!.times)),
  })
}

const ROUNDS = 60

/**
 * The largest of the uses per unit at the best split between the stations, from below: any weights of sum 1 prove theirs.
 *
 * @see linear programming duality; multiplicative weights, Arora, Hazan & Kale (2012), both from memory
 */
function bestSplit(flows: Flows, uses: readonly StayUse[]): number {
  let weights = uses.map(() => 1 / uses.length)
  let best = 0
  for (let round = 0; round < ROUNDS; round += 1) {
    const weighted: StayUse = (stay) => uses.reduce((sum, use, index) => sum + weights[index]! * use(stay), 0)
    const least = unitUse(flows, { stay: weighted })
    best = Math.max(best, least.perUnit)
    const each = uses.map((use) => otherUse(flows, { stay: use }, least))
    const largest = Math.max(...each)
    if (!(largest > 0) || least.perUnit >= largest * (1 - 1e-9)) break
    const step = 2 / (round + 2)
    const grown = weights.map((weight, index) => weight * Math.exp((step * each[index]!) / largest))
    const sum = grown.reduce((total, weight) => total + weight, 0)
    weights = grown.map((weight) => weight / sum)
  }
  return Math.max(best, splitByPace(flows, uses))
}

/** Weights by pace, where each station does the same work alone: exact for one product and one choice. */
function splitByPace(flows: Flows, uses: readonly StayUse[]): number {
  const means = uses.map((use) => {
    const stays = flows.flows.flatMap(({ share, graph }) =>
      graph.nodes.flatMap(({ stay }) => (stay !== null && use(stay) > 0 ? [{ share, seconds: use(stay) }] : [])),
    )
    const shares = stays.reduce((sum, { share }) => sum + share, 0)
    return shares > 0 ? stays.reduce((sum, { share, seconds }) => sum + share * seconds, 0) / shares : 0
  })
  if (means.some((mean) => mean <= 0)) return 0
  const sum = means.reduce((total, mean) => total + 1 / mean, 0)
  const weights = means.map((mean) => 1 / mean / sum)
  return unitUse(flows, { stay: (stay) => uses.reduce((total, use, index) => total + weights[index]! * use(stay), 0) }).perUnit
}
