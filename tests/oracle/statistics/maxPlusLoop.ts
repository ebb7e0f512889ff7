import { ToyGenerator } from './toyGenerator.ts'

/** When each job starts and leaves each station. */
export interface LoopTimes {
  readonly start: readonly (readonly number[])[]
  readonly departure: readonly (readonly number[])[]
}

/**
 * A closed row of stations by max-plus recursion, blocking after service: an independent model whose outputs feed the statistics. Shares nothing with the event engine.
 *
 * Job j starts at station i when it has come from the one before and job j − 1 has left; it leaves when it is done and there is room at the next: one place in it and `places` before it.
 * The first station needs a carrier: job j takes the one of job j − carriers.
 *
 * @param work    by station, then by job
 * @param places  waiting places before each station; the first are filled by all carriers at the start
 * @param travel  into each station
 */
export function maxPlusLoop(
  work: readonly (readonly number[])[],
  carriers: number,
  places: readonly number[],
  travel: readonly number[],
): LoopTimes {
  const last = work.length - 1
  const start: number[][] = work.map(() => [])
  const departure: number[][] = work.map(() => [])
  for (let j = 0; j < work[0]!.length; j++) {
    for (let i = 0; i <= last; i++) {
      const job = i === 0 ? j - carriers : j
      const came = job < 0 ? 0 : departure[i === 0 ? last : i - 1]![job]! + travel[i]!
      start[i]![j] = Math.max(came, j > 0 ? departure[i]![j - 1]! : 0)
      const ahead = j - 1 - (places[i + 1] ?? 0)
      const room = i < last && ahead >= 0 ? departure[i + 1]![ahead]! : 0
      departure[i]![j] = Math.max(start[i]![j]! + work[i]![j]!, room)
    }
  }
  return { start, departure }
}

const MEANS = [20, 24, 22, 18]
const JOBS = 700
const FROM = 200

/** Jobs an hour of the loop that the vectors describe: four stations, spread 0.25 of the mean, jobs 201 … 700 counted. `scaled` multiplies the times of one station. */
export function vectorLoopRate(replication: number, carriers: number, scaled: { station: number; by: number } | null = null): number {
  const work = MEANS.map((mean, i) => workTimes(replication, i + 1, mean).map((s) => (scaled?.station === i ? s * scaled.by : s)))
  const { departure } = maxPlusLoop(work, carriers, [carriers - 1, 2, 2, 2], [6, 6, 6, 6])
  return (3600 * (JOBS - FROM)) / (departure[3]![JOBS - 1]! - departure[3]![FROM - 1]!)
}

function workTimes(replication: number, station: number, mean: number): number[] {
  const toy = new ToyGenerator(((20011 * replication + 104729 * station + 12345) % (2147483647 - 1)) + 1)
  for (let i = 0; i < 50; i++) toy.u()
  return Array.from({ length: JOBS }, () => mean * (1 + 0.25 * toy.z()))
}
