/**
 * What is timed. A case has parts, each run in a fresh process: an engine, or whatever its name says. A part does its work once and returns its figures, whose
 * names say the unit: …PerSecond is a rate, seconds… and nanoseconds… are times.
 */
import { rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { TimerQueue } from '@loopwright/kernel'
import { createSimulator, type LineSpec } from '@loopwright/line'
import { lineOfFile } from '../helpers/lineOfFile.ts'
import { seconds, secondsUntil, wayToStart } from './command.ts'
import { blockLoop, generalLine } from './lines.ts'

export type Figures = Record<string, number>
/** @param share  of the work that is done, 1 but for trying out */
export type Part = (share: number) => Figures | Promise<Figures>
export interface Case {
  readonly about: string
  /** true: the parts are the two engines */
  readonly byEngine: boolean
  /** true: the work is done in processes of its own, so that the peak of memory here says nothing */
  readonly elsewhere: boolean
  readonly parts: Readonly<Record<string, Part>>
}

function secondsOf(work: () => void): number {
  const start = process.hrtime.bigint()
  work()
  return Number(process.hrtime.bigint() - start) / 1e9
}

interface Amount {
  /** replications before the clock starts, for the compiler */
  readonly warm: number
  /** replications that are timed */
  readonly timed: number
}

export function replications(spec: LineSpec, engine: 'events' | 'recursion', amount: Amount): Figures {
  const { warm, timed } = amount
  const simulator = createSimulator(spec, { engine })
  const hours = spec.window.endSeconds / 3600
  let replication = 0
  let events = 0
  const run = (count: number): void => {
    for (let k = 0; k < count; k++) events += simulator.run({ seed: 'bench', replication: replication++ }).events
  }
  run(warm)
  events = 0
  const seconds = secondsOf(() => run(timed))
  return {
    replicationsPerSecond: timed / seconds,
    simulatedHoursPerSecond: (timed * hours) / seconds,
    nanosecondsPerEvent: (seconds * 1e9) / events,
  }
}

const few = (count: number, share: number): number => Math.max(1, Math.round(count * share))

const part =
  (engine: 'events' | 'recursion', spec: (share: number) => LineSpec, { warm, timed }: Amount): Part =>
  (share) =>
    replications(spec(share), engine, { warm: Math.ceil(warm * share), timed: few(timed, share) })

/** Of lines that the recursion holds for. */
const engines = (spec: (share: number) => LineSpec, amount: Amount): Case['parts'] => ({
  events: part('events', spec, amount),
  recursion: part('recursion', spec, amount),
})

/** Of others. */
const events = (spec: (share: number) => LineSpec, amount: Amount): Case['parts'] => ({ events: part('events', spec, amount) })

const DEMO = 'scenarios/outdoor-unit-base-line.yaml'

const GRAPH = 'scenarios/test-and-repair-line.yaml'

/** Hold model: take the earliest, put it back at a random later time. */
function hold(pending: number, share: number): Figures {
  const queue = new TimerQueue(pending)
  let x = 123456789
  const random = (): number => {
    x ^= x << 13
    x ^= x >>> 17
    x ^= x << 5
    return (x >>> 0) / 2 ** 32
  }
  for (let slot = 0; slot < pending; slot++) {
    queue.times[slot] = random()
    queue.schedule(slot)
  }
  const turns = few(2_000_000, share)
  const turn = (): void => {
    for (let k = 0; k < turns; k++) {
      const slot = queue.pop()
      queue.times[slot]! += 2 * random()
      queue.schedule(slot)
    }
  }
  turn()
  return { nanosecondsPerHold: (secondsOf(turn) * 1e9) / turns }
}

const COUNTS = '6..18'
const sweepWords = (replications: number): string[] => [
  'sweep',
  DEMO,
  '--carriers',
  COUNTS,
  '--replications',
  String(replications),
  '--json',
  '--fresh',
]

const inProcess = { byEngine: false, elsewhere: false }
const asCommand = { byEngine: false, elsewhere: true }
const byEngine = { byEngine: true, elsewhere: false }

export const CASES: Record<string, Case> = {
  small: {
    about: '20 zones, six stations, 11 carriers, 8 h from empty; 1,000 replications after 200 for the compiler, one core',
    ...byEngine,
    parts: engines(() => blockLoop(1, 8), { warm: 200, timed: 1_000 }),
  },
  large: {
    about:
      'the same block 100 times in one loop: 2,000 zones, 600 stations, 1,000 carriers, 40 h; three runs after two for the compiler, one core',
    ...byEngine,
    parts: engines((share) => blockLoop(100, 40 * share), { warm: 2, timed: 3 }),
  },
  demo: {
    about: 'the demo loop with all its stops and breaks, two shifts, 12 carriers; 200 replications after 60, one core',
    ...byEngine,
    parts: engines(() => lineOfFile(DEMO), { warm: 60, timed: 200 }),
  },
  general: {
    about:
      '60 zones in three lanes, two diverts, two merges, four operators for eight stations, products that come, inspection and rework, 24 carriers, 8 h; 200 replications after 60, one core',
    ...byEngine,
    parts: events(() => generalLine(8), { warm: 60, timed: 200 }),
  },
  graph: {
    about: 'the test-and-repair line: open, a spur, a push, two operators, stops, 16 h; 500 replications after 100, one core',
    ...byEngine,
    parts: events(() => lineOfFile(GRAPH), { warm: 100, timed: 500 }),
  },
  sweep: {
    about: `the command: demo sweep, carriers ${COUNTS}, all cores, no page; ${wayToStart()}`,
    ...asCommand,
    parts: {
      '200 replications': (share) => ({ seconds: seconds(sweepWords(few(200, share))) }),
      '20 replications': (share) => ({ seconds: seconds(sweepWords(few(20, share))) }),
    },
  },
  'first answer': {
    about: 'the same sweep, 200 replications: from the start of the command to its sentence about the first 10 runs of each count',
    ...asCommand,
    parts: {
      [wayToStart()]: async () => ({ seconds: await secondsUntil('so far, after 10 runs of each', sweepWords(200)) }),
      'from source': async () => ({ seconds: await secondsUntil('so far, after 10 runs of each', sweepWords(200), 'source') }),
    },
  },
  queue: {
    about: 'hold model: take the earliest of so many pending, put it back later',
    ...inProcess,
    parts: {
      '16': (share) => hold(16, share),
      '1000': (share) => hold(1_000, share),
      '100000': (share) => hold(100_000, share),
    },
  },
  start: {
    about: 'what npm start runs: sweep, tables and page',
    ...asCommand,
    parts: {
      all: () => {
        const out = join(tmpdir(), `loopwright-bench-${process.pid}.html`)
        const took = seconds(['notebook', 'notebooks/how-many-carriers.ts', '--out', out, '--fresh'])
        const megabytes = statSync(out).size / 1e6
        rmSync(out)
        return { seconds: took, megabytes }
      },
    },
  },
}
