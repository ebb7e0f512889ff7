/** What a queue costs, and how it grows, as a page. */
import type { Crowd } from './crowd.ts'

export interface Growth {
  readonly cores: number
  readonly jobs: number
  readonly perJob: number
  /** the same study on one machine, one thread: seconds by the clock, milliseconds of processor time a job */
  readonly alone: { readonly seconds: number; readonly jobMs: number }
  readonly workers: readonly {
    readonly workers: number
    readonly seconds: number
    readonly replicationsPerSecond: number
    /** milliseconds of processor time a job: of the server, of all workers, of who asks */
    readonly serverMs: number
    readonly workerMs: number
    readonly askingMs: number
    /** of who asks, without its start: of one job more */
    readonly nextMs: number
    /** of the machine, a minute's mean */
    readonly load: number
  }[]
  readonly recoverySeconds: number
  readonly crowds: readonly (Crowd & { readonly byLimits: number; readonly simulated: number; readonly enough: number })[]
}

const table = (heads: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [heads, heads.map(() => '--:'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n')

/** Milliseconds of processor time that a job costs beside its simulation. */
export const overheadMs = ({ alone }: Pick<Growth, 'alone'>, one: Growth['workers'][number]): number =>
  one.serverMs + one.workerMs + one.askingMs - alone.jobMs

export function growthPage(growth: Growth): string {
  const { cores, jobs, perJob, alone, workers, recoverySeconds, crowds } = growth
  const first = workers[0]!
  const busy = workers.some(({ load }) => load > cores + 1)
  return `# What a queue costs

Made by \`npm run growth -- --page\`: ${jobs} jobs of ${perJob} replications of a small line, by workers of one thread each, queue and all on one machine of ${cores} cores.${busy ? ' **The machine was busy with other work**, so that rates and waits by the clock are no measure of what it can do; processor time is, but for what crowded caches add.' : ''}

## One, two, four workers

${table(
  ['workers', 'replications/s', 'times one worker', 'load of the machine'],
  workers.map((one) => [
    one.workers,
    one.replicationsPerSecond.toFixed(0),
    (one.replicationsPerSecond / first.replicationsPerSecond).toFixed(2),
    one.load.toFixed(1),
  ]),
)}

More workers than cores bring nothing, and with two cores the second worker shares with the server and who asks.

## A job

Milliseconds of processor time; without a queue a job takes ${alone.jobMs.toFixed(1)} ms, the study itself and its start included.

${table(
  ['workers', 'worker', 'server', 'who asks', 'of that for one job more', 'beside the simulation'],
  workers.map((one) => [
    one.workers,
    one.workerMs.toFixed(2),
    one.serverMs.toFixed(2),
    one.askingMs.toFixed(2),
    one.nextMs.toFixed(2),
    overheadMs(growth, one).toFixed(2),
  ]),
)}

A worker that was killed in the middle of its jobs: they were answered, and the rest of the study with them, ${recoverySeconds.toFixed(1)} s later.

## Many workers

By the model of \`crowd.ts\`: each worker as quick as it can, \`workers / (job + slowest)\`, or the slowest of those who have to do with every job, \`1 / slowest\`, whichever is less. The slowest is the server, or who asks: that takes answers apart, keeps them, and does the study's own arithmetic. Assumed: jobs are there at any time; one thread a worker; the slowest handles one job after the other, in the same time however many wait; no time for the network. A loop simulates it: workers are carriers, the slowest is a station, to simulate is the way round; its times are exponential here, so that a queue forms sooner than the limits say.

${table(
  ['job, ms', 'slowest, ms', 'workers', 'jobs/s by the limits', 'simulated', 'of the limits', 'it limits from'],
  crowds.map((one) => [
    one.jobMs.toFixed(0),
    one.serverMs.toFixed(2),
    one.workers,
    one.byLimits.toFixed(0),
    one.simulated.toFixed(0),
    `${((100 * one.simulated) / one.byLimits).toFixed(0)} %`,
    `${Math.round(one.enough)} workers`,
  ]),
)}

A job is made for a second at most: then one server and one study keep some hundred workers busy. Short jobs keep a few; they are of studies that are done in a minute anyway.
`
}
