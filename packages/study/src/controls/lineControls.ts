/** Controls of the runs of a line: how lucky each world was, by its streams alone; nothing is run. */
import type { BreakdownSpec, LineSpec } from '@loopwright/line'
import { lineLimits, workingSeconds, windowSecondsOf } from '@loopwright/line/bounds'
import type { Control } from '@loopwright/stats/worlds'
import { isOpen } from '../runs/lineChance.ts'
import { rejectLuckOf, useLuckOf } from './drawLuck.ts'
import { meanOfOthers, type RunUse } from './runUse.ts'
import { safetyLuckOf } from './safetyLuck.ts'
import { World } from './series.ts'
import { arrivalLuckOf, type Luck, type Stretch, stopLuckOf } from './stopLuck.ts'
import { workLuckOf } from './workLuck.ts'

/** What a control tells the luck of, as people call it: all stops together, and their two kinds, since they may weigh differently. */
export const CONTROL_NAMES = ['stops', 'stops of stations', 'stops on the way', 'work', 'arrivals', 'receivers', 'rejects'] as const
export type ControlName = (typeof CONTROL_NAMES)[number]

/** One part of a control: the luck of a stream over the stretch of it that a window uses on average. */
interface Part {
  readonly name: ControlName
  readonly luck: Luck
  readonly stretchOf: (use: RunUse) => Stretch
}

/**
 * The controls of each study of a line: one value a replication, of mean 0.
 *
 * How long the stretch of a stream is must not depend on the world that it is drawn from, or its luck would not have the mean 0. So each replication takes the mean
 * use of all the others: what it draws from is independent of them.
 *
 * @param seed  of the runs; replication k of all studies is world k
 * @param lines the same line with the number of carriers of each study, and what its replications 0 … n − 1 used
 * @returns     by study; empty where chance reaches nothing that is known, or there are fewer than 2 replications
 */
export function lineControls(seed: string, lines: readonly { readonly line: LineSpec; readonly uses: readonly RunUse[] }[]): Control[][] {
  const studies = lines.map(({ line, uses }) => {
    const parts = uses.length < 2 ? [] : partsOf(line)
    return {
      parts,
      replications: parts.length === 0 ? 0 : uses.length,
      useOf: parts.length === 0 ? null : meanOfOthers(uses),
      values: new Map<ControlName, number[]>(),
    }
  })
  const most = Math.max(0, ...studies.map(({ replications }) => replications))
  for (let replication = 0; replication < most; replication++) {
    const world = new World(seed, replication)
    for (const { parts, replications, useOf, values } of studies) {
      if (useOf === null || replication >= replications) continue
      const use = useOf(replication)
      for (const { name, luck, stretchOf } of parts) {
        const of = values.get(name) ?? []
        values.set(name, of)
        of[replication] = (of[replication] ?? 0) + luck(world, stretchOf(use))
      }
    }
  }
  return studies.map(({ values }) => {
    const [stations, way] = [values.get('stops of stations'), values.get('stops on the way')]
    const both =
      stations === undefined || way === undefined ? [] : [{ name: 'stops', values: stations.map((luck, k) => luck + way[k]!), mean: 0 }]
    return [...both, ...[...values].map(([name, of]) => ({ name, values: of, mean: 0 }))]
  })
}

/** Everything in the line that chance reaches by a stream whose mean is known. */
function partsOf(line: LineSpec): Part[] {
  const { warmupSeconds, endSeconds } = line.window
  const windowSeconds = windowSecondsOf(line)
  const inWindow = workingSeconds(line)
  const before = workingSeconds({ ...line, window: { warmupSeconds: 0, endSeconds: warmupSeconds } })
  // what a window uses, as a stretch after what the time before it uses at the same pace
  const scaled = (amount: number): Stretch => {
    const from = inWindow > 0 ? (amount * before) / inWindow : 0
    return { from, to: from + amount }
  }
  const whole = (amount: number): Stretch => {
    const { from, to } = scaled(amount)
    return { from: Math.round(from), to: Math.round(to) }
  }
  const parts: (Omit<Part, 'luck'> & { readonly luck: Luck | null })[] = []
  const byClock = { from: warmupSeconds, to: endSeconds }
  line.breakdowns.forEach((source, index) => {
    const stretchOf = source.clock === 'calendar' ? () => byClock : (use: RunUse) => scaled(use.operatingSeconds[index]!)
    parts.push({ name: stopName(source), luck: stopLuckOf(source, windowSeconds), stretchOf })
  })
  line.stations.forEach((station, index) => {
    parts.push({
      name: 'stops on the way',
      luck: safetyLuckOf(station, windowSeconds),
      stretchOf: (use) => whole(use.watchedMoves[index]!),
    })
    const supply = station.supply
    if (supply !== null) parts.push({ name: 'arrivals', luck: arrivalLuckOf(supply.name, supply.arrivals), stretchOf: () => byClock })
    if (station.receiver === null) return
    const unloads = line.stations.filter(({ unload }) => unload !== null).length
    const luck = useLuckOf(`receiver/${station.name}`, station.receiver.cycleSeconds)
    parts.push({ name: 'receivers', luck, stretchOf: (use) => whole(use.units / unloads) })
  })
  parts.push({ name: 'arrivals', luck: arrivalLuckOf(line.supply.name, line.supply.arrivals), stretchOf: () => byClock })
  parts.push({ name: 'work', luck: workLuckOf(line, limitingStations(line)), stretchOf: (use) => whole(use.units) })
  for (const { task, rejectProbability } of line.inspections) {
    parts.push({
      name: 'rejects',
      luck: isOpen(rejectProbability) ? rejectLuckOf(line.tasks[task]!, rejectProbability) : null,
      stretchOf: (use) => whole(use.units),
    })
  }
  return parts.flatMap(({ luck, ...part }) => (luck === null ? [] : [{ ...part, luck }]))
}

const stopName = ({ part }: BreakdownSpec): ControlName => (part.kind === 'station' ? 'stops of stations' : 'stops on the way')

/** Where the work is that limits the line: at the slowest station or stations, at those of the operator who limits it, else at all. */
function limitingStations(line: LineSpec): readonly number[] {
  const [first] = lineLimits(line)
  if (first?.kind === 'station' && first.stations.length > 0) return first.stations
  if (first?.kind === 'operator')
    return [...new Set(first.operators.flatMap((operator) => line.operators[operator]!.stations))].sort((a, b) => a - b)
  return line.stations.map((_, index) => index)
}
