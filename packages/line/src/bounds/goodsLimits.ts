/** What comes and what is taken: arrivals, lists of products, receivers. (MODEL.md §8) */
import { listWords } from '../words/listWords.ts'
import type { LineSpec, SupplySpec } from '../spec.ts'
import { stationWords } from '../words/stationWords.ts'
import { type Flows, unitUse } from './flows.ts'
import { type Limit, limitOf } from './limit.ts'
import { meanSeconds } from './meanSeconds.ts'
import { servedLoads } from './servedLoads.ts'
import { windowSecondsOf } from './workingSeconds.ts'

export function goodsLimits(spec: LineSpec, flows: Flows): Limit[] {
  return [arrivalLimit(spec, flows), listLimit(spec, flows), ...receiverLimits(spec, flows)].filter((limit) => limit !== null)
}

/**
 * Where products come from: the supplies of all load stations, each once.
 *
 * @example loadSupplies(line) // => [{ name: 'supply', arrivals: { kind: 'always' }, queueLimit: null }]
 */
export function loadSupplies({ stations, supply: common }: Pick<LineSpec, 'stations' | 'supply'>): SupplySpec[] {
  const loads = stations.flatMap(({ load, supply }) => (load === null ? [] : [supply ?? common]))
  return [...new Map(loads.map((one) => [one.name, one])).values()]
}

/** All supplies of all loads together; none where one of them is always there. */
function arrivalLimit(spec: LineSpec, { goodShare }: Flows): Limit | null {
  const all = loadSupplies({ ...spec, stations: servedLoads(spec).map((station) => spec.stations[station]!) })
  if (all.length === 0 || all.some(({ arrivals }) => arrivals.kind === 'always')) return null
  const { warmupSeconds, endSeconds } = spec.window
  const windowSeconds = windowSecondsOf(spec)
  let inWindow = 0
  let ever = 0
  let isList = false
  for (const { arrivals } of all) {
    if (arrivals.kind === 'every') {
      const seconds = meanSeconds(arrivals.seconds)
      if (seconds <= 0) return null
      inWindow += windowSeconds / seconds
      ever += windowSeconds / seconds
    } else if (arrivals.kind === 'list') {
      isList = true
      inWindow += arrivals.instants.filter((instant) => instant > warmupSeconds && instant <= endSeconds).length
      ever += arrivals.instants.filter((instant) => instant <= endSeconds).length
    }
  }
  const own = all.filter(({ name }) => name !== spec.supply.name).map(({ name }) => name)
  return limitOf(spec, {
    kind: 'arrivals',
    name: own.length === 0 ? 'arrivals' : `arrivals (${listWords(all.map(({ name }) => name))})`,
    secondsPerUnit: windowSeconds / (inWindow > 0 ? inWindow : ever) / goodShare,
    availableSeconds: windowSeconds,
    provenPerWindow: ever * goodShare,
    reasons: isList ? ['products that are in the line at the start'] : [],
  })
}

/** A list of products that runs out. */
function listLimit(spec: LineSpec, { goodShare }: Flows): Limit | null {
  if (spec.mix.kind !== 'list') return null
  const windowSeconds = windowSecondsOf(spec)
  const units = spec.mix.sequence.length * goodShare
  return limitOf(spec, {
    kind: 'list',
    name: 'list of products',
    secondsPerUnit: windowSeconds / units,
    availableSeconds: windowSeconds,
    provenPerWindow: units,
    reasons: [],
  })
}

/** Each receiver that every product goes to; and all together, where there are several unload stations with one. */
function receiverLimits(spec: LineSpec, flows: Flows): (Limit | null)[] {
  const windowSeconds = windowSecondsOf(spec)
  const cycles = spec.stations.map(({ unload, receiver }) =>
    unload === null || receiver === null ? null : meanSeconds(receiver.cycleSeconds),
  )
  const of = (stations: readonly number[]): Limit | null => {
    // the weights that make all of them equally busy are the best for a receiver of anything
    const paces = stations.map((station) => (cycles[station]! > 0 ? 1 / cycles[station]! : Infinity))
    const pace = paces.reduce((sum, each) => sum + each, 0)
    if (!Number.isFinite(pace)) return null
    const seconds = unitUse(flows, { end: (station) => (stations.includes(station) ? 1 / pace : 0) }).perUnit
    return limitOf(spec, {
      kind: 'receiver',
      name: `receiver at ${listWords(stations.map((station) => stationWords(spec.stations[station]!)))}`,
      stations,
      secondsPerUnit: seconds,
      availableSeconds: windowSeconds,
      provenPerWindow: windowSeconds / seconds,
      reasons: [],
    })
  }
  const having = [...cycles.keys()].filter((station) => cycles[station] !== null)
  return [...having.map((station) => of([station])), ...(having.length > 1 ? [of(having)] : [])]
}
