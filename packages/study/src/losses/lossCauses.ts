/** Causes of lost output, each as the same line without it. Since every source of chance has its own stream, nothing else changes. */
import { completeLine, type GivenLine, type LineSpec, type StopSource, stopSources, type SupplySpec } from '@loopwright/line'
import { type Law, lawOrNull, loadSupplies, mixShares } from '@loopwright/line/bounds'
import { type Distribution, distributionMean, scaledTimes } from '@loopwright/stats'
import { withPaths, withStations, withSupplies, withTaskTimes } from '../change/lineChange.ts'
import { withCarriers } from '../change/withCarriers.ts'

/** The kind of a cause of loss. */
export type LossKind =
  | 'stop'
  | 'safety stops'
  | 'breaks'
  | 'operators'
  | 'supply'
  | 'receiver'
  | 'exchange'
  | 'spread of times'
  | 'products'
  | 'carriers'

/** Something that costs output, and the line without it. */
export interface LossCause {
  readonly kind: LossKind
  /** such as "testFault", "breaks", "exchange at S6" */
  readonly name: string
  /** the line without it; taking it out twice is the same as once */
  readonly without: (line: LineSpec) => LineSpec
}

/** What is taken out together. */
export interface LossCauseOptions {
  /** breakdown sources that are taken out together, by name; default: each by itself */
  readonly stopGroups?: readonly { readonly name: string; readonly sources: readonly string[] }[]
  /** the number of carriers with which none are short; default: the line's own */
  readonly bestCarriers?: number
}

/**
 * The causes in the order in which they are taken out: stops, safety stops, breaks, waiting for operators, for products and for receivers, the exchange at the
 * constraint, the spread of task times, differences between products, the carriers. What a line has nothing of is left out. The constraint is that of the line as it stands, by its law; a line that is no single closed loop has none.
 *
 * @example lossCauses(line).map(({ name }) => name) // => ['jam', 'breaks', 'exchange at B', 'spread of task times', 'shortage of carriers']
 */
export function lossCauses(given: GivenLine, options: LossCauseOptions = {}): LossCause[] {
  const line = completeLine(given)
  const { stopGroups = line.breakdowns.map(({ name }) => ({ name, sources: [name] })), bestCarriers = line.carriers.count } = options
  const variantShares = mixShares(line.mix, line.variants.length)
  const lineLaw = lawOrNull(line)
  return [
    ...stopGroups.map(
      ({ name, sources }): LossCause => ({
        kind: 'stop',
        name,
        without: (now) => ({ ...now, breakdowns: now.breakdowns.filter((source) => !sources.includes(source.name)) }),
      }),
    ),
    ...Object.entries(WITHOUT).flatMap(([of, cause]) => (stopSources(line).some(({ kind }) => kind === of) ? [cause] : [])),
    ...(line.breaks.length > 0 ? [BREAKS] : []),
    ...waitingCauses(line),
    ...(lineLaw === null ? [] : [exchangeCause(line, lineLaw)]),
    {
      kind: 'spread of times',
      name: 'spread of task times',
      without: (now) => withTaskTimes(now, (times) => (times === null ? null : atMean(times))),
    },
    ...(line.variants.length > 1
      ? [
          {
            kind: 'products',
            name: 'differences between products',
            without: (now) => averageProduct(now, variantShares),
          } satisfies LossCause,
        ]
      : []),
    {
      kind: 'carriers',
      name: bestCarriers < line.carriers.count ? 'too many carriers' : 'shortage of carriers',
      without: (now) => withCarriers(now, bestCarriers),
    },
  ]
}

const BREAKS: LossCause = { kind: 'breaks', name: 'breaks', without: (now) => ({ ...now, breaks: [] }) }

/** Stops that are no sources of breakdowns, all of a kind together. */
const WITHOUT: Readonly<Record<Exclude<StopSource['kind'], 'breakdown'>, LossCause>> = {
  /** nobody is ever in the way of a move: what that costs, not what may be left out */
  'safety stop': {
    kind: 'safety stops',
    name: 'safety stops',
    without: (now) => withStations(now, (station) => ({ ...station, safetyStop: null })),
  },
}

/** Everybody has own operators, products are always there, receivers always ready. */
function waitingCauses(line: LineSpec): LossCause[] {
  const { operators, stations } = line
  const arrives = loadSupplies(line).some(({ arrivals }) => arrivals.kind !== 'always')
  const cause = (kind: LossKind, name: string, there: boolean, without: LossCause['without']): LossCause[] =>
    there ? [{ kind, name, without }] : []
  const always = (one: SupplySpec): SupplySpec => ({ ...one, arrivals: { kind: 'always' }, queueLimit: null })
  return [
    ...cause('operators', 'waiting for operators', operators.length > 0, (now) => ({ ...now, operators: [], walks: [] })),
    ...cause('supply', 'waiting for products', arrives, (now) => withSupplies(now, always)),
    ...cause(
      'receiver',
      'waiting for receivers',
      stations.some(({ unload, receiver }) => unload !== null && receiver !== null),
      (now) => withStations(now, (station) => ({ ...station, receiver: null })),
    ),
  ]
}

function exchangeCause(line: LineSpec, { constraintZone, constraintStation }: Law): LossCause {
  const place = constraintStation === null ? line.zones[constraintZone]!.name : line.stations[constraintStation]!.name
  return { kind: 'exchange', name: `exchange at ${place}`, without: (now) => withoutExchange(now, constraintZone) }
}

function atMean(times: Distribution): Distribution {
  return times.kind === 'constant' ? times : { kind: 'constant', value: distributionMean(times) }
}

/** A move into the zone and the clear out of it take no time: the next carrier is there as one leaves. */
function withoutExchange(line: LineSpec, zone: number): LineSpec {
  const zero: Distribution = { kind: 'constant', value: 0 }
  return withPaths(line, (path) => {
    const into =
      path.to === zone
        ? { ...path, moveSeconds: zero, clearSeconds: path.clearSeconds === 'move' ? path.moveSeconds : path.clearSeconds }
        : path
    return into.from === zone ? { ...into, clearSeconds: zero } : into
  })
}

/** Every product takes the mean over the mix, keeping the spread of the draw: each time is scaled to it. */
function averageProduct(line: LineSpec, shares: readonly number[]): LineSpec {
  if (line.variants.length < 2) return line
  const means = new Map<string, number>()
  withTaskTimes(line, (times, { station, task, variant }) => {
    const key = `${station}/${task}`
    means.set(key, (means.get(key) ?? 0) + (times === null ? 0 : shares[variant]! * distributionMean(times)))
    return times
  })
  const first = new Map<string, Distribution>()
  withTaskTimes(line, (times, { station, task }) => {
    const key = `${station}/${task}`
    if (times !== null && !first.has(key)) first.set(key, times)
    return times
  })
  return withTaskTimes(line, (_, { station, task }) => {
    const key = `${station}/${task}`
    const times = first.get(key)
    return times === undefined ? null : atOtherMean(times, means.get(key)!)
  })
}

function atOtherMean(times: Distribution, mean: number): Distribution {
  const now = distributionMean(times)
  if (Math.abs(now - mean) <= 1e-12 * mean) return times
  return now > 0 ? scaledTimes(times, mean / now) : { kind: 'constant', value: mean }
}
