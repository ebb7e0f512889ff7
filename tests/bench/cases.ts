/**
 * What is timed. A case has parts, each run in a fresh process: an engine, a size, or the whole (`all`). A part does its work once and returns its figures, whose
 * names say the unit: …PerSecond is a rate, seconds… and nanoseconds… are times.
 */
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { TimerQueue } from '@loopwright/kernel'
import { createSimulator, type LineSpec } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
import { blockLoop } from './lines.ts'

export type Figures = Record<string, number>
export interface Case {
  readonly about: string
  readonly parts: Readonly<Record<string, () => Figures>>
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

function replications(spec: LineSpec, engine: 'events' | 'recursion', { warm, timed }: Amount): Figures {
  const simulator = createSimulator(spec, { engine })
  const hours = spec.window.endSeconds / 3600
  let replication = 0
  let events = 0
  const run = (count: number): void => {
    for (let k = 0; k < count; k++) events += simulator.run('bench', replication++).events
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

const engines = (spec: () => LineSpec, amount: Amount): Case['parts'] => ({
  events: () => replications(spec(), 'events', amount),
  recursion: () => replications(spec(), 'recursion', amount),
})

const BUILT = 'packages/cli/dist/cli.js'
const DEMO = 'scenarios/outdoor-unit-base-line.yaml'

function demo(): LineSpec {
  const { scenario } = readScenario(readFileSync(DEMO, 'utf8'), DEMO)
  if (scenario === null) throw new Error(`${DEMO} has errors`)
  return scenario.line
}

/** Hold model: take the earliest, put it back at a random later time. */
function hold(pending: number): Figures {
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
  const turns = 2_000_000
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

/** The command as it is built, or from source where it is not. */
function command(args: readonly string[]): number {
  return secondsOf(() => {
    const done = spawnSync(process.execPath, [existsSync(BUILT) ? BUILT : 'packages/cli/bin/loopwright.js', ...args], { encoding: 'utf8' })
    if (done.status !== 0) throw new Error(`loopwright ${args.join(' ')} ended with ${done.status}: ${done.stderr}`)
  })
}

const sweep = (count: number): Figures => ({
  seconds: command(['sweep', DEMO, '--carriers', '5..17', '--replications', String(count), '--json', '--fresh']),
})

/** Blocks in one loop; hours so that each size has about as many events. */
const growth = (blocks: number): Case['parts'] => ({
  [`${20 * blocks} zones, events`]: () => replications(blockLoop(blocks, 800 / blocks), 'events', { warm: 1, timed: 1 }),
  [`${20 * blocks} zones, recursion`]: () => replications(blockLoop(blocks, 800 / blocks), 'recursion', { warm: 1, timed: 1 }),
})

export const CASES: Record<string, Case> = {
  small: {
    about: '20 zones, six stations, 11 carriers, 8 h from empty; 1,000 replications, one core',
    parts: engines(() => blockLoop(1, 8), { warm: 50, timed: 950 }),
  },
  large: {
    about: 'the same block 100 times in one loop: 2,000 zones, 600 stations, 1,000 carriers, 40 h; one core',
    parts: engines(() => blockLoop(100, 40), { warm: 0, timed: 1 }),
  },
  demo: {
    about: 'the demo loop with all its stops and breaks, two shifts, 12 carriers; one core',
    parts: engines(demo, { warm: 20, timed: 200 }),
  },
  sweep: {
    about: 'the command: demo sweep, 5…17 carriers, all cores, no page; as it is built, or from source where it is not',
    parts: { '200 replications': () => sweep(200), '20 replications': () => sweep(20) },
  },
  queue: {
    about: 'hold model: take the earliest of so many pending, put it back later',
    parts: { '16': () => hold(16), '1000': () => hold(1_000), '100000': () => hold(100_000) },
  },
  growth: {
    about: 'cost per event as the loop grows, 20 to 20,000 zones half of them with carriers',
    parts: { ...growth(1), ...growth(10), ...growth(100), ...growth(1000) },
  },
  start: {
    about: 'what npm start runs: sweep, tables and page',
    parts: {
      all: () => {
        const out = join(tmpdir(), `loopwright-bench-${process.pid}.html`)
        const seconds = command(['notebook', 'notebooks/how-many-carriers.ts', '--out', out, '--fresh'])
        const megabytes = statSync(out).size / 1e6
        rmSync(out)
        return { seconds, megabytes }
      },
    },
  },
}
