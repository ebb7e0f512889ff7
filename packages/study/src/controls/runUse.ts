/** How much of its streams a run uses within the window: from its row, in numbers that only say where to look. */
import { type LineSpec, stopSources } from '@loopwright/line'
import { lawOrNull, mixShares } from '@loopwright/line/bounds'
import { distributionMean } from '@loopwright/stats'
import { meanTaskSeconds } from '../change/lineChange.ts'
import { type RowLayout, stationColumn } from '../runs/runRow.ts'

export interface RunUse {
  /** products taken off */
  readonly units: number
  /** by source of breakdowns: seconds for which its part operates; of sources by the calendar 0 */
  readonly operatingSeconds: readonly number[]
  /** by station: moves that its safety stop watches; 0 without one */
  readonly watchedMoves: readonly number[]
}

/** Reads the use of a run from its row. */
export function runUseOf(line: LineSpec, layout: RowLayout): (row: Float64Array) => RunUse {
  const shares = workShares(line)
  const loop = lawOrNull(line)
  // seconds of a part other than a station while a carrier passes
  const weights = line.breakdowns.map(({ clock, part }) => {
    if (clock === 'calendar' || part.kind === 'station') return 0
    if (part.kind === 'section') return 1
    const transfer = line.zones[part.index]!.transfer
    const change = transfer === null ? 0 : transfer.liftSeconds + transfer.lowerSeconds
    const exchange = loop?.exchanges[part.index]
    return part.kind === 'transfer' ? change : change + (exchange === undefined ? 1 : exchange.moveSeconds + exchange.clearSeconds)
  })
  // where it is not known how many pass: by the failures of a kind, which all its parts share by those seconds
  const failuresPerWeight = line.breakdowns.map(({ part: { kind } }) =>
    line.breakdowns.reduce(
      (sum, { part, timeToFailureSeconds }, other) =>
        part.kind === kind ? sum + weights[other]! / distributionMean(timeToFailureSeconds) : sum,
      0,
    ),
  )
  const worked = line.stations.map((_, station) => stationColumn(layout, station, 'working'))
  const sources = stopSources(line)
  return (row) => {
    const stopsOf = (cause: number): number => row[layout.cause + 2 * cause + 1]!
    const failuresOf = (kind: string): number =>
      line.breakdowns.reduce((sum, { part, clock }, other) => (part.kind === kind && clock === 'operating' ? sum + stopsOf(other) : sum), 0)
    return {
      units: row[layout.units]!,
      operatingSeconds: line.breakdowns.map(({ part, clock }, index) => {
        if (clock === 'calendar') return 0
        if (part.kind === 'station') return shares[part.index]! * row[worked[part.index]!]!
        if (loop !== null && part.kind !== 'section') return (weights[index]! * row[layout.units]!) / loop.unitsPerLap
        return failuresPerWeight[index]! > 0 ? (weights[index]! * failuresOf(part.kind)) / failuresPerWeight[index]! : 0
      }),
      watchedMoves: line.stations.map(({ safetyStop }, index) => {
        if (safetyStop === null || safetyStop.probability <= 0) return 0
        return stopsOf(sources.findIndex((each) => each.kind === 'safety stop' && each.station === index)) / safetyStop.probability
      }),
    }
  }
}

/** Work as a share of work and release, by station, by mean times. */
function workShares(line: LineSpec): number[] {
  const mix = mixShares(line.mix, line.variants.length)
  return line.stations.map((station) => {
    const mean = meanTaskSeconds(station, mix)
    const release = distributionMean(station.releaseSeconds)
    return mean + release > 0 ? mean / (mean + release) : 0
  })
}

/** For each run, the mean use of all the others. @param uses  two or more */
export function meanOfOthers(uses: readonly RunUse[]): (run: number) => RunUse {
  const [first] = uses
  const others = (of: (use: RunUse) => number): ((run: number) => number) => {
    const sum = uses.reduce((total, use) => total + of(use), 0)
    return (run) => (sum - of(uses[run]!)) / (uses.length - 1)
  }
  const units = others((use) => use.units)
  const operatingSeconds = first!.operatingSeconds.map((_, source) => others((use) => use.operatingSeconds[source]!))
  const watchedMoves = first!.watchedMoves.map((_, station) => others((use) => use.watchedMoves[station]!))
  return (run) => ({
    units: units(run),
    operatingSeconds: operatingSeconds.map((of) => of(run)),
    watchedMoves: watchedMoves.map((of) => of(run)),
  })
}
