/** What is timed, each in a fresh process: `run` does the work once and returns the figures beside the time. */
import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { TimerQueue } from '@loopwright/kernel'
import { createSimulator, type LineSpec } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
import { blockLoop } from './lines.ts'

export type Figures = Record<string, number>
export interface Case {
  readonly about: string
  readonly run: () => Figures
}

const ROOT = new URL('../../', import.meta.url).pathname

function secondsOf(work: () => void): number {
  const start = process.hrtime.bigint()
  work()
  return Number(process.hrtime.bigint() - start) / 1e9
}

/** Runs replications until `atLeast` seconds are over, after a warm-up of the compiler. */
function replications(spec: LineSpec, atLeast: number): Figures {
  const simulator = createSimulator(spec)
  const hours = spec.window.endSeconds / 3600
  let replication = 0
  let events = 0
  const some = (): void => {
    events += simulator.run('bench', replication++).events
  }
  const warm = secondsOf(() => {
    for (let k = 0; k < 3; k++) some()
  })
  const batch = Math.max(1, Math.round((atLeast / warm) * 3))
  events = 0
  const seconds = secondsOf(() => {
    for (let k = 0; k < batch; k++) some()
  })
  return {
    replicationsPerSecond: batch / seconds,
    simulatedHoursPerSecond: (batch * hours) / seconds,
    nanosecondsPerEvent: (seconds * 1e9) / events,
  }
}

function demo(): LineSpec {
  const name = 'scenarios/outdoor-unit-base-line.yaml'
  const { scenario } = readScenario(readFileSync(join(ROOT, name), 'utf8'), name)
  if (scenario === null) throw new Error(`${name} has errors`)
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

function command(args: readonly string[]): number {
  return secondsOf(() => {
    const done = spawnSync(process.execPath, [join(ROOT, 'packages/cli/bin/loopwright.js'), ...args], { cwd: ROOT, encoding: 'utf8' })
    if (done.status !== 0) throw new Error(`loopwright ${args.join(' ')} ended with ${done.status}: ${done.stderr}`)
  })
}

const DEMO = 'scenarios/outdoor-unit-base-line.yaml'

export const CASES: Record<string, Case> = {
  small: { about: '20 zones, six stations, 11 carriers, 8 h from empty, one core', run: () => replications(blockLoop(1, 8), 2) },
  'thousand zones': { about: 'the same block 50 times in one loop, 2 h', run: () => replications(blockLoop(50, 2), 2) },
  demo: { about: 'the demo loop with all its stops and breaks, two shifts, one core', run: () => replications(demo(), 2) },
  'queue 16': { about: 'hold model, 16 pending', run: () => hold(16) },
  'queue 1000': { about: 'hold model, 1,000 pending', run: () => hold(1_000) },
  'queue 100000': { about: 'hold model, 100,000 pending', run: () => hold(100_000) },
  sweep: {
    about: 'the command: demo sweep, 5…17 carriers, 200 replications, all cores, no page',
    run: () => ({ seconds: command(['sweep', DEMO, '--carriers', '5..17', '--replications', '200', '--json']) }),
  },
  start: {
    about: 'what npm start runs: sweep, tables and page',
    run: () => {
      const out = join(tmpdir(), `loopwright-bench-${process.pid}.html`)
      const seconds = command(['notebook', 'notebooks/how-many-carriers.ts', '--out', out])
      const megabytes = statSync(out).size / 1e6
      rmSync(out)
      return { seconds, megabytes }
    },
  },
}
