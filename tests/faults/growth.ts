/**
 * `npm run growth`: what a queue costs, and how it grows. Processor time, which other work on the machine hardly changes, is told for every part of it; rates and
 * waits by the wall clock, beside the machine's load, which decides what they are worth. `--page` writes growth.md beside this file.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { availableParallelism, loadavg } from 'node:os'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { replicate } from '@loopwright/study'
import { BIN } from '../cli/spawned.ts'
import { now } from './clock.ts'
import { type Member, member, worker } from './crew.ts'
import { type Crowd, crowdLine, jobsPerSecond, workersEnough } from './crowd.ts'
import { growthPage, type Growth } from './growthPage.ts'
import { type RedisServer, redisServer } from './redisServer.ts'

const { values } = parseArgs({ options: { page: { type: 'boolean', default: false }, replications: { type: 'string', default: '4000' } } })
const REPLICATIONS = Number(values.replications)
const PER_JOB = 50
const COUNTS = 3
const JOBS = Math.ceil(REPLICATIONS / PER_JOB) * COUNTS + COUNTS
const TICKS = 100 // of processor time a second, on Linux
const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms))
const words = (...more: string[]): string[] => wordsOf(REPLICATIONS, ...more)
const wordsOf = (replications: number, ...more: string[]): string[] => [
  BIN,
  'sweep',
  'tests/helpers/scenarios/small.yaml',
  '--carriers',
  '2..4',
  '--replications',
  String(replications),
  '--fresh',
  ...more,
]

/** Seconds of processor time of a process so far, its threads too; null where it is gone. */
function spent(pid: number): number | null {
  try {
    const [user, system] = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /, '')
      .split(' ')
      .slice(11, 13)
      .map(Number)
    return (user! + system!) / TICKS
  } catch {
    return null
  }
}

/** Runs a command; its processor time, and the seconds that it says its runs took. */
async function timed(all: readonly string[]): Promise<{ readonly spentSeconds: number; readonly seconds: number }> {
  const one = member(all)
  let last = 0
  const look = setInterval(() => {
    last = spent(one.child.pid!) ?? last
  }, 20)
  const { code } = await one.ended
  clearInterval(look)
  const told = /done: [\d\s  ,]+ replications in (?:(\d+) min )?([\d.]+)/.exec(one.said())
  if (code !== 0 || told === null) throw new Error(one.said())
  return { spentSeconds: last, seconds: 60 * Number(told[1] ?? 0) + Number(told[2]) }
}

async function hired(server: RedisServer, count: number): Promise<Member[]> {
  const all = Array.from({ length: count }, () => worker(server.port))
  while (all.some((one) => !one.said().includes('works for'))) await wait(100)
  return all
}

/** Seconds from the end of a worker in the middle of its jobs until they are answered by another. */
async function recovery(server: RedisServer): Promise<number> {
  const first = await hired(server, 1)
  const asking = member([...words('--seed', `recovery ${now()}`), '--queue', `redis://127.0.0.1:${server.port}`])
  while (!/\d workers? with/.test(asking.said())) await wait(20)
  await wait(500)
  const second = await hired(server, 1)
  first[0]!.kill('SIGKILL')
  const killed = now()
  await asking.ended
  for (const one of second) one.kill('SIGKILL')
  return (now() - killed) / 1000
}

const server = await redisServer()
const queue = ['--queue', `redis://127.0.0.1:${server.port}`]
const measured: Growth['workers'][number][] = []
process.stderr.write('one machine\n')
await timed(words('--workers', '1'))
const alone = await timed(words('--workers', '1'))
for (const count of [1, 2, 4]) {
  process.stderr.write(`${count} workers\n`)
  const workers = await hired(server, count)
  const pids = [server.pid, ...workers.map(({ child }) => child.pid!)]
  // once to warm up, once to measure
  await timed(words('--seed', 'warm', ...queue))
  const before = pids.map((pid) => spent(pid)!)
  const asked = await timed(words(...queue))
  const afterwards = pids.map((pid) => spent(pid)!)
  // what does not grow with the jobs, its start above all
  const few = await timed(wordsOf(REPLICATIONS / 4, ...queue))
  const [ofServer, ...ofWorkers] = pids.map((_, index) => afterwards[index]! - before[index]!)
  for (const one of workers) one.kill('SIGKILL')
  measured.push({
    workers: count,
    seconds: asked.seconds,
    replicationsPerSecond: (JOBS * PER_JOB) / asked.seconds,
    serverMs: (1000 * ofServer!) / JOBS,
    workerMs: (1000 * ofWorkers.reduce((sum, one) => sum + one, 0)) / JOBS,
    askingMs: (1000 * asked.spentSeconds) / JOBS,
    nextMs: (1000 * (asked.spentSeconds - few.spentSeconds)) / (0.75 * JOBS),
    load: loadavg()[0]!,
  })
}
process.stderr.write('recovery\n')
const recoverySeconds = await recovery(server)
await server.stop()

// server and who asks work at the same time: the slower of them limits
const serverMs = Math.max(...measured.flatMap((one) => [one.serverMs, one.nextMs]))
const crowds: Growth['crowds'][number][] = []
for (const jobMs of [(1000 * alone.spentSeconds) / JOBS, 1000]) {
  for (const workers of [2, 10, 100, 1000]) {
    process.stderr.write(`crowd of ${workers}\n`)
    const crowd: Crowd = { workers, jobMs, serverMs }
    const [run] = await replicate(crowdLine(crowd, 1, Math.max(400, 2 * workers)), { replications: 1 }, { seed: '1', workers: 0 })
    crowds.push({ ...crowd, byLimits: jobsPerSecond(crowd), simulated: run!.outputPerHour / 3.6, enough: workersEnough(crowd) })
  }
}
const growth: Growth = {
  cores: availableParallelism(),
  jobs: JOBS,
  perJob: PER_JOB,
  alone: { seconds: alone.seconds, jobMs: (1000 * alone.spentSeconds) / JOBS },
  workers: measured,
  recoverySeconds,
  crowds,
}
const page = growthPage(growth)
if (values.page) writeFileSync(fileURLToPath(new URL('./growth.md', import.meta.url)), page)
process.stdout.write(page)
