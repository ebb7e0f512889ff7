/**
 * Many workers at one queue, as a closed loop: a worker is a carrier, the server is a station that handles one job after the other, and to simulate is the way round.
 * What the loop makes is jobs.
 *
 * Assumed: jobs are there at any time; a worker has one thread and asks for its next job when it has handed in the last; the server takes as long for each job,
 * however many wait (it works on one at a time); the network takes no time beside it. Who asks is such a server, too:
 * the slower of both limits.
 */
import { type LineSpec, loopLine } from '@loopwright/line'

export interface Crowd {
  /** threads, one worker each; count, ≥ 1 */
  readonly workers: number
  /** milliseconds that a job takes a worker, > 0 */
  readonly jobMs: number
  /** milliseconds that the server has to do with a job, > 0; below jobMs */
  readonly serverMs: number
}

/**
 * Jobs a second, by the two limits of such a loop: each worker is as quick as it can, or the server is.
 *
 * @see Denning & Buzen, The operational analysis of queueing network models (1978): asymptotic bounds of a closed system
 */
export const jobsPerSecond = ({ workers, jobMs, serverMs }: Crowd): number =>
  Math.min((1000 * workers) / (jobMs + serverMs), 1000 / serverMs)

/** Workers from which on the server limits. */
export const workersEnough = ({ jobMs, serverMs }: Omit<Crowd, 'workers'>): number => (jobMs + serverMs) / serverMs

/** zones that the server's time is as long as: what it is not at work is the moves to and from it, an eighth of its time */
const ZONES_OF_SERVER = 16
const ZONES_MAX = 5000

/**
 * The loop, in which a second stands for a millisecond.
 *
 * @param spread  standard deviation of the server's time, as a share of its mean; 0: none, 1: as an exponential time
 * @param jobs    that its window is long enough for, by the limits
 */
export function crowdLine(crowd: Crowd, spread: number, jobs: number): LineSpec {
  const { workers, jobMs, serverMs } = crowd
  // twice as many as workers, so that nobody is in another's way
  const zones = Math.max(2 * workers + 4, Math.min(ZONES_MAX, Math.round((ZONES_OF_SERVER * jobMs) / serverMs)))
  const lap = jobMs / (zones - 2)
  // from one carrier's start out of the station to the next one's stop in it
  const work = serverMs - 2 * lap
  // until every worker has been round twice, queues and all
  const warmup = 2 * Math.max(jobMs + serverMs, workers * serverMs)
  const seconds = (1000 * jobs) / jobsPerSecond(crowd)
  const { spec } = loopLine({
    zones,
    carriers: { count: workers, start: 'spread' },
    paths: Array.from({ length: zones }, (_, from) => ({ from, move: lap })),
    stations: { server: { zone: 0, unload: 0, load: spread === 0 ? work : { kind: 'gamma', mean: work, cv: spread } } },
    drive: { reaction: 0 },
    warmup,
    end: warmup + seconds,
  })
  return spec
}
