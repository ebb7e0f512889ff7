/** What a queue costs, and how it grows, as a page. */
import type { Bare } from './bare.ts'
import type { Crowd } from './crowd.ts'

export interface Growth {
  readonly cores: number
  /** processes that ran or waited to, in the minute before the first measurement */
  readonly loadBefore: number
  /** processes with nothing between them: a plain loop, and runs of a small line */
  readonly bare: { readonly plain: readonly Bare[]; readonly runs: readonly Bare[] }
  readonly studies: readonly {
    readonly what: string
    readonly jobs: number
    /** replications of a job, on average */
    readonly perJob: number
    /** the same study on one machine, one thread: milliseconds of processor time a job, its start included */
    readonly aloneMs: number
    readonly workers: readonly Measured[]
  }[]
  readonly recoverySeconds: number
  readonly crowds: readonly (Crowd & { readonly byLimits: number; readonly simulated: number; readonly enough: number })[]
}

export interface Measured {
  readonly workers: number
  readonly replicationsPerSecond: number
  /** milliseconds of processor time a job: of the server, of all workers, of who asks for one job more */
  readonly serverMs: number
  readonly workerMs: number
  readonly askingMs: number
  /** of all of them together, with the start of who asks, more than on one machine without a queue */
  readonly moreMs: number
  /** of the machine, a minute's mean */
  readonly load: number
}

const table = (heads: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [heads, heads.map(() => '--:'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n')

/** Milliseconds of processor time of a job beside its worker: of the server, and of who asks, the arithmetic of the study included. */
export const besideMs = ({ serverMs, askingMs }: Measured): number => serverMs + askingMs

/**
 * Jobs a second that so many cores allow, which workers of one thread, server and who asks have to share: each worker has one core at most, all together have all.
 */
export const allowed = (cores: number, workers: number, one: Measured): number =>
  1000 * Math.min(workers / one.workerMs, cores / (one.workerMs + besideMs(one)))

/** How many times as quick as one worker, by the processor time of the first measurement. */
export const timesOne = (cores: number, workers: number, first: Measured): number =>
  allowed(cores, workers, first) / allowed(cores, 1, first)

export function growthPage({ cores, loadBefore, bare, studies, recoverySeconds, crowds }: Growth): string {
  const busy = loadBefore > 1
  return `# What a queue costs

Made by \`npm run growth -- --page\`, with workers of one thread each, queue and all on one machine of ${cores} cores.${busy ? ' **The machine was busy with other work**, so that rates by the clock are no measure of what it can do; processor time is, but for what crowded caches add.' : ''} Processor time is that of \`/proc/PID/stat\`, in milliseconds a job.

## What the machine gives without a queue

Processes side by side that know nothing of each other: times as much as one of them does, by the clock, and by processor time, which tells whether they are in each other's way (two threads of one core, shared caches). No queue can do better.

${table(
  ['processes', 'a plain loop', 'by processor time', 'runs of the small loop', 'by processor time'],
  bare.plain.map((one, row) => {
    const runs = bare.runs[row]!
    return [one.processes, ...[one.timesOne, one.byProcessor, runs.timesOne, runs.byProcessor].map((times) => times.toFixed(2))]
  }),
)}

${studies.map((study) => studyPart(cores, bare.runs, study)).join('\n\n')}

“Of the machine” is how much of what as many processes get without a queue, by the clock. “Allowed” is what the processor time of one worker's measurement lets ${cores} cores do: no worker has more than one of them, and workers, server and who asks have no more than all. With machines of their own for workers the last of these limits is gone, and the next part holds.

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

So a study of short runs keeps a handful of workers busy, one of runs of ten milliseconds some hundred: beyond that whoever asks is the slowest, and several studies at one queue are quicker than one.
`
}

/** Per cent that workers grow by, of what as many processes grow by that have nothing to do with each other. */
function ofBare(bare: readonly Bare[], one: Measured, first: Measured): number {
  const { timesOne } = bare.find(({ processes }) => processes === one.workers)!
  return (100 * one.replicationsPerSecond) / first.replicationsPerSecond / timesOne
}

function studyPart(cores: number, bare: readonly Bare[], { what, jobs, perJob, aloneMs, workers }: Growth['studies'][number]): string {
  const first = workers[0]!
  return `## ${what[0]!.toUpperCase()}${what.slice(1)}

${jobs} jobs of ${perJob.toFixed(0)} replications; on one machine without a queue a job takes ${aloneMs.toFixed(1)} ms, the study itself and its start included.

${table(
  [
    'workers',
    'worker',
    'server',
    'who asks, one job more',
    'more than without a queue',
    'replications/s',
    'times one worker',
    'of the machine',
    'allowed',
    'load of the machine',
  ],
  workers.map((one) => [
    one.workers,
    one.workerMs.toFixed(2),
    one.serverMs.toFixed(2),
    one.askingMs.toFixed(2),
    one.moreMs.toFixed(2),
    one.replicationsPerSecond.toFixed(0),
    (one.replicationsPerSecond / first.replicationsPerSecond).toFixed(2),
    `${ofBare(bare, one, first).toFixed(0)} %`,
    timesOne(cores, one.workers, first).toFixed(2),
    one.load.toFixed(1),
  ]),
)}`
}
