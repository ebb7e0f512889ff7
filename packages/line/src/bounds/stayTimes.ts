/** What a stay takes of the time of its station: work, moves in and out, and what stops take with them. (MODEL.md §3, §4, §7) */
import { distributionMean } from '@loopwright/stats'
import { REST, SPEED } from '../moves/motion.ts'
import type { LineSpec } from '../spec.ts'
import type { PathTimes } from './pathTimes.ts'
import type { Stay } from './productWalk.ts'
import { availability, repairRatio, type StopShares, stopShares } from './stopShares.ts'
import { changeSeconds } from './transferChange.ts'
import { breaksWithin, workingSeconds, windowSecondsOf } from './workingSeconds.ts'

export interface StayTimes {
  /** moves in and clears out, seconds, the shortest there are: into the zone from speed, and from rest */
  readonly leastMoveSeconds: number
  readonly moveSeconds: number
  /** transfer changes */
  readonly changeSeconds: number
  readonly stops: StopShares
  /** of the window, seconds: when the station can work */
  readonly workingSeconds: number
  /** breaks within the window, seconds */
  readonly breaks: readonly number[]
}

export function stayTimes(spec: LineSpec, station: number, times: readonly PathTimes[]): StayTimes {
  const { zone, worksInBreaks } = spec.stations[station]!
  const ins = spec.paths.flatMap((path, index) => (path.to === zone ? [times[index]!] : []))
  const outs = spec.paths.flatMap((path, index) => (path.from === zone ? [times[index]!] : []))
  const least = (values: readonly number[]): number => (values.length === 0 ? 0 : Math.min(...values))
  const out = least(outs.map(({ clear }) => clear[REST]!))
  const change = ins.length === 1 && outs.length === 1 ? changeSeconds(spec, zone) : null
  const windowSeconds = windowSecondsOf(spec)
  return {
    leastMoveSeconds: least(ins.flatMap(({ move }) => [move[2 * SPEED + REST]!, move[2 * REST + REST]!])) + out,
    moveSeconds: least(ins.map(({ move }) => move[2 * REST + REST]!)) + out,
    changeSeconds: change === null ? 0 : change.out + change.back,
    stops: stopShares(spec, station),
    workingSeconds: worksInBreaks ? windowSeconds : workingSeconds(spec),
    breaks: worksInBreaks ? [] : breaksWithin(spec),
  }
}

const busy = (stay: Stay): number => stay.workSeconds + stay.releaseSeconds

/** Without stops, each carrier coming in from rest. */
export function plainSeconds({ moveSeconds, changeSeconds: change }: StayTimes, stay: Stay): number {
  return busy(stay) + (stay.exchanges ? moveSeconds + change : 0)
}

/** What stops on the operating clock add, and somebody in the way of a move in or out. */
export function stoppedSeconds({ moveSeconds, changeSeconds: change, stops }: StayTimes, stay: Stay): number {
  const exchange = stay.exchanges ? moveSeconds * stops.perMove + change * stops.perChange + 2 * stops.safetySeconds : 0
  return stay.workSeconds * stops.perWork + exchange
}

/** By how much stops by the clock, and those of the section, make everything longer: an estimate, each by itself. */
export function stopFactor({ stops }: StayTimes, movingShare: number): number {
  const clock = stops.byClock.reduce((product, source) => product * availability(source), 1)
  const section = stops.bySection.reduce((sum, source) => sum + movingShare * repairRatio(source), 0)
  return clock > 0 ? (1 + section) / clock : Infinity
}

/** One way to prove that a station does no more: seconds of a stay, and how many there are in the window. */
export interface Proof {
  readonly seconds: (stay: Stay) => number
  readonly availableSeconds: number
}

/**
 * Times that cannot overlap at one station, so that none of these is ever exceeded in the long run.
 *
 * Breaks do not stop moves, repairs and resets: each break may hide one of each. A stop by the clock may hide the stay that it meets, for which twice its mean is taken.
 *
 * @param longestStay  seconds, of all stays there, by their means
 */
export function proofs(spec: LineSpec, times: StayTimes, longestStay: number): Proof[] {
  const { leastMoveSeconds: moves, changeSeconds: change, stops, workingSeconds: net, breaks } = times
  const windowSeconds = windowSecondsOf(spec)
  const plain = (stay: Stay): number => busy(stay) + (stay.exchanges ? moves + change : 0)
  const repairs = spec.breakdowns.reduce((sum, { repairSeconds }) => sum + 2 * distributionMean(repairSeconds), 0)
  const hidden = (seconds: number): number => breaks.reduce((sum, length) => sum + Math.min(length, seconds), 0)
  const operating = (stay: Stay): number =>
    plain(stay) +
    stay.workSeconds * stops.perWork +
    (stay.exchanges ? moves * stops.perMove + change * stops.perChange + stops.safetySeconds : 0)
  const down = (source: (typeof stops.byClock)[number]): number => Math.max(0, distributionMean(source.repairSeconds) - 2 * longestStay)
  const isStopped = stops.perWork + stops.perMove + stops.perChange + stops.safetySeconds > 0
  const resets = 2 * stops.safetySeconds
  return [
    { seconds: busy, availableSeconds: net },
    { seconds: plain, availableSeconds: net + hidden(moves + change) },
    ...(isStopped && !stops.mayTie
      ? [{ seconds: operating, availableSeconds: net + hidden(moves + change + repairs + resets) }]
      : [{ seconds: (stay: Stay) => stay.workSeconds * (1 + stops.perWork), availableSeconds: net + hidden(repairs) }]),
    ...stops.byClock.map((source) => ({
      seconds: plain,
      availableSeconds:
        windowSeconds *
        (1 - down(source) / (distributionMean(source.timeToFailureSeconds) + distributionMean(source.repairSeconds) || Infinity)),
    })),
    ...stops.bySection.flatMap((source) => {
      const up = distributionMean(source.timeToFailureSeconds)
      const seconds = (stay: Stay): number => plain(stay) + (stay.exchanges ? (moves / up) * down(source) : 0)
      return up > 0 ? [{ seconds, availableSeconds: net + hidden(moves + change + repairs) }] : []
    }),
  ]
}
