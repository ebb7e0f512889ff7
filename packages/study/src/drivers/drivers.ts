/** What might drive the output of a line, each as a change by a factor: task times, moves, clears, walks, arrivals, receivers, stops, the mix. */
import { completeLine, type GivenLine, type LineSpec, stationWords, type SupplySpec } from '@loopwright/line'
import { loadSupplies } from '@loopwright/line/bounds'
import { distributionMean, scaledTimes } from '@loopwright/stats'
import { taskPlaces, timesOf, withBreakdowns, withPaths, withStations, withSupplies, withTaskTimes } from '../change/lineChange.ts'

const TIMES = ['task', 'release', 'moves', 'clears', 'reaction', 'transfers', 'walking', 'arrivals', 'receiver'] as const

/** The kinds of drivers, in the order in which they are told. */
export const DRIVER_KINDS = [...TIMES, 'repair', 'time to failure', 'mix'] as const

/** One of DRIVER_KINDS. */
export type DriverKind = (typeof DRIVER_KINDS)[number]

/** The kinds whose elasticities sum to 1 on a line of constant times without breaks and failures: everything there that takes time. */
export const TIME_KINDS: readonly DriverKind[] = TIMES

/** Something that takes time, fails or is mixed, and the line with more or less of it. */
export interface Driver {
  readonly kind: DriverKind
  /** such as "S6 Tightness test" or "moves" */
  readonly name: string
  /** index of the station; null: no station's */
  readonly station: number | null
  /** less of it is better, as of a time; else more of it, as of the time between stops */
  readonly lessIsBetter: boolean
  /** the line with the times (the share) of this driver times the factor, and nothing drawn anew */
  readonly scaled: (factor: number) => LineSpec
}

/** What is scaled together. */
export interface DriverOptions {
  /** breakdown sources that are scaled together, by name; default: each by itself */
  readonly stopGroups?: readonly { readonly name: string; readonly sources: readonly string[] }[]
  /** variants whose shares are scaled together, by index; default: each by itself */
  readonly mixGroups?: readonly { readonly name: string; readonly variants: readonly number[] }[]
}

/**
 * All drivers of a line; what takes no time is left out.
 *
 * @example driversOf(line).map(({ name }) => name).slice(0, 3) // => ['A Load', 'B Fit', 'C Unload']
 */
export function driversOf(given: GivenLine, options: DriverOptions = {}): Driver[] {
  const line = completeLine(given)
  return [
    ...taskDrivers(line),
    ...lineDrivers(line),
    ...peopleAndGoods(line),
    ...stopDrivers(line, options.stopGroups),
    ...mixDrivers(line, options.mixGroups),
  ]
}

function taskDrivers(line: LineSpec): Driver[] {
  return taskPlaces(line)
    .filter(({ station, task }) => timesOf(line, station, task).some((times) => times !== null && distributionMean(times) > 0))
    .map(({ station, task, several }) => {
      const called = stationWords(line.stations[station]!)
      return {
        kind: 'task',
        name: several ? `${called}: ${line.tasks[task]!}` : called,
        station,
        lessIsBetter: true,
        scaled: (factor) =>
          withTaskTimes(line, (times, at) =>
            times !== null && at.station === station && at.task === task ? scaledTimes(times, factor) : times,
          ),
      }
    })
}

function lineDrivers(line: LineSpec): Driver[] {
  const driver = (kind: DriverKind, name: string, there: boolean, scaled: (factor: number) => LineSpec): Driver[] =>
    there ? [{ kind, name, station: null, lessIsBetter: true, scaled }] : []
  const { zones, stations, paths, reactionSeconds, staggerSeconds } = line
  const given = paths.some(({ clearSeconds }) => clearSeconds !== null && clearSeconds !== 'move' && distributionMean(clearSeconds) > 0)
  const changes = zones.some(({ transfer }) => transfer !== null && transfer.liftSeconds + transfer.lowerSeconds > 0)
  return [
    ...driver(
      'release',
      'release by the operator',
      stations.some(({ releaseSeconds }) => distributionMean(releaseSeconds) > 0),
      (factor) => withStations(line, (station) => ({ ...station, releaseSeconds: scaledTimes(station.releaseSeconds, factor) })),
    ),
    ...driver('moves', 'moves (speed and ramps)', true, (factor) => withMoves(line, factor)),
    ...driver('clears', 'given clear times', given, (factor) =>
      withPaths(line, (path) =>
        path.clearSeconds === null || path.clearSeconds === 'move'
          ? path
          : { ...path, clearSeconds: scaledTimes(path.clearSeconds, factor) },
      ),
    ),
    ...driver('reaction', 'reaction of the control', reactionSeconds + staggerSeconds > 0, (factor) => ({
      ...line,
      reactionSeconds: reactionSeconds * factor,
      staggerSeconds: staggerSeconds * factor,
    })),
    ...driver('transfers', 'lifting and lowering', changes, (factor) => ({
      ...line,
      zones: zones.map((zone) =>
        zone.transfer === null
          ? zone
          : {
              ...zone,
              transfer: {
                ...zone.transfer,
                liftSeconds: zone.transfer.liftSeconds * factor,
                lowerSeconds: zone.transfer.lowerSeconds * factor,
              },
            },
      ),
    })),
  ]
}

/** Walks, the time between arrivals, the cycles of receivers. Arrivals at given instants stay as they are: they are a list, not a rate. */
function peopleAndGoods(line: LineSpec): Driver[] {
  const { walks, operators, stations } = line
  const walking: Driver[] =
    operators.length > 0 && walks.some(({ seconds }) => seconds > 0)
      ? [
          {
            kind: 'walking',
            name: 'walking of operators',
            station: null,
            lessIsBetter: true,
            scaled: (factor) => ({ ...line, walks: walks.map((walk) => ({ ...walk, seconds: walk.seconds * factor })) }),
          },
        ]
      : []
  const scaledSupply = (one: SupplySpec, factor: number): SupplySpec =>
    one.arrivals.kind === 'every' ? { ...one, arrivals: { kind: 'every', seconds: scaledTimes(one.arrivals.seconds, factor) } } : one
  const arrivals: Driver[] = loadSupplies(line).some(({ arrivals: { kind } }) => kind === 'every')
    ? [
        {
          kind: 'arrivals',
          name: 'time between arrivals',
          station: null,
          lessIsBetter: true,
          scaled: (factor) => withSupplies(line, (one) => scaledSupply(one, factor)),
        },
      ]
    : []
  const receivers = stations.flatMap(({ name, title, unload, receiver }, index): Driver[] =>
    unload === null || receiver === null || distributionMean(receiver.cycleSeconds) <= 0
      ? []
      : [
          {
            kind: 'receiver',
            name: `receiver at ${stationWords({ name, title })}`,
            station: index,
            lessIsBetter: true,
            scaled: (factor) =>
              withStations(line, (station, at) =>
                at === index
                  ? { ...station, receiver: { ...receiver, cycleSeconds: scaledTimes(receiver.cycleSeconds, factor) } }
                  : station,
              ),
          },
        ],
  )
  return [...walking, ...arrivals, ...receivers]
}

/** Every move takes `factor` times as long: d/v and v/a do where v is divided by the factor and a by its square; so does the travelled part of a clear. */
export function withMoves(line: LineSpec, factor: number): LineSpec {
  return withPaths(line, (path) => ({
    ...path,
    speedMetresPerSecond: path.speedMetresPerSecond === null ? null : path.speedMetresPerSecond / factor,
    accelerationMetresPerSecondSquared:
      path.accelerationMetresPerSecondSquared === null ? null : path.accelerationMetresPerSecondSquared / factor ** 2,
    moveSeconds: path.moveSeconds === null ? null : scaledTimes(path.moveSeconds, factor),
  }))
}

function stopDrivers(line: LineSpec, groups: DriverOptions['stopGroups']): Driver[] {
  const all = groups ?? line.breakdowns.map(({ name }) => ({ name, sources: [name] }))
  return all.flatMap(({ name, sources }): Driver[] => [
    {
      kind: 'repair',
      name: `${name}: how long`,
      station: null,
      lessIsBetter: true,
      scaled: (factor) =>
        withBreakdowns(line, (source) =>
          sources.includes(source.name) ? { ...source, repairSeconds: scaledTimes(source.repairSeconds, factor) } : source,
        ),
    },
    {
      kind: 'time to failure',
      name: `${name}: how rare`,
      station: null,
      lessIsBetter: false,
      scaled: (factor) =>
        withBreakdowns(line, (source) =>
          sources.includes(source.name) ? { ...source, timeToFailureSeconds: scaledTimes(source.timeToFailureSeconds, factor) } : source,
        ),
    },
  ])
}

/** Shares of a random mix; of a levelled or fixed one a change of a share changes which product comes when, which is another question. */
function mixDrivers(line: LineSpec, groups: DriverOptions['mixGroups']): Driver[] {
  const { mix, variants } = line
  if (mix.kind !== 'random' || variants.length < 2) return []
  const all = groups ?? variants.map((name, index) => ({ name, variants: [index] }))
  const sum = mix.shares.reduce((total, share) => total + share, 0)
  return all.flatMap(({ name, variants: inside }): Driver[] => {
    const share = inside.reduce((total, variant) => total + mix.shares[variant]!, 0) / sum
    if (!(share > 0 && share < 1)) return []
    return [
      {
        kind: 'mix',
        name: `share of ${name}`,
        station: null,
        lessIsBetter: false,
        scaled: (factor) => {
          // the share itself grows by the factor, the others give way in proportion
          const rest = (1 - Math.min(1, share * factor)) / (1 - share)
          const scale = Math.min(1, share * factor) / share
          return { ...line, mix: { ...mix, shares: mix.shares.map((weight, index) => weight * (inside.includes(index) ? scale : rest)) } }
        },
      },
    ]
  })
}
