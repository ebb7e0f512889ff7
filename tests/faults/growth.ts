/**
 * `npm run growth`: what a queue costs, and how it grows. Processor time, which other work on the machine hardly changes, is told for every part of it; rates and
 * waits by the wall clock, beside the machine's load, which decides what they are worth. `--page` writes growth.md beside this file, `--times 3` takes studies three times as long.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { availableParallelism, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { setTimeout as wait } from 'node:timers/promises'
import { replicate } from '@loopwright/study'
import { BIN } from '../cli/spawned.ts'
import { bare } from './bare.ts'
import { now } from './clock.ts'
import { type Member, member, worker } from './crew.ts'
import { type Crowd, crowdLine, jobsPerSecond, workersEnough } from './crowd.ts'
import { growthPage, type Growth } from './growthPage.ts'
import { type RedisServer, redisServer } from './redisServer.ts'
import { heldIn } from './survive.ts'

const { values } = parseArgs({ options: { page: { type: 'boolean', default: false }, times: { type: 'string', default: '1' } } })
const TIMES = Number(values.times)
const TICKS = 100 // of processor time a second, on Linux
const WORKERS = [1, 2, 4]
/** of processes with nothing between them */
const TURNS = 3
interface Study {
  readonly what: string
  readonly words: readonly string[]
  /** of each line or count */
  readonly replications: number
}

const SHORT: Study = {
  what: 'a sweep of a small loop, whose runs are short',
  words: ['sweep', 'tests/helpers/scenarios/small.yaml', '--carriers', '2..4'],
  replications: 4000 * TIMES,
}
const LONG: Study = {
  what: 'a comparison of two lines with test and repair, whose runs are longer',
  words: ['compare', 'scenarios/test-and-repair-line.yaml', '--set', 'faster: drive.speed=13 m/min'],
  replications: 300 * TIMES,
}
const folder = mkdtempSync(join(tmpdir(), 'growth '))
let stores = 0

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

interface Timed {
  readonly spentSeconds: number
  /** that it says its runs took */
  readonly seconds: number
  readonly jobs: number
  readonly replications: number
}

/** Runs a study with a store of its own, as whoever asks does. */
async function timed({ words, replications }: Study, ...more: readonly string[]): Promise<Timed> {
  const store = join(folder, `${stores++}`)
  const one = member([BIN, ...words, '--replications', String(replications), ...more, '--store', store])
  let last = 0
  const look = setInterval(() => {
    last = spent(one.child.pid!) ?? last
  }, 20)
  const { code } = await one.ended
  clearInterval(look)
  const told = /done: [\d\s  ,]+ replications in (?:(\d+) min )?([\d.]+)/.exec(one.said())
  if (code !== 0 || told === null) throw new Error(one.said())
  const held = heldIn(store)
  rmSync(store, { recursive: true, force: true })
  return { spentSeconds: last, seconds: 60 * Number(told[1] ?? 0) + Number(told[2]), jobs: held.jobs, replications: held.replications }
}

async function hired(server: RedisServer, count: number): Promise<Member[]> {
  const all = Array.from({ length: count }, () => worker(server.port))
  while (all.some((one) => !one.said().includes('works for'))) await wait(100)
  return all
}

/** Seconds from the end of a worker in the middle of its jobs until they are answered by another. */
async function recovery(server: RedisServer): Promise<number> {
  const first = await hired(server, 1)
  const asking = timed(SHORT, '--seed', 'recovery', '--queue', `redis://127.0.0.1:${server.port}`)
  while (spent(first[0]!.child.pid!)! < 2) await wait(20)
  const second = await hired(server, 1)
  first[0]!.kill('SIGKILL')
  const killed = now()
  await asking
  for (const one of second) one.kill('SIGKILL')
  return (now() - killed) / 1000
}

async function measured(server: RedisServer, study: Study): Promise<Growth['studies'][number]> {
  const queue = ['--queue', `redis://127.0.0.1:${server.port}`]
  process.stderr.write(`${study.what}: one machine\n`)
  const alone = await timed(study, '--workers', '1')
  const workers: Growth['studies'][number]['workers'][number][] = []
  let jobs = 0
  let perJob = 0
  for (const count of WORKERS) {
    process.stderr.write(`${count} workers\n`)
    const crew = await hired(server, count)
    const pids = [server.pid, ...crew.map(({ child }) => child.pid!)]
    // to warm up, and what does not grow with the jobs: its start above all
    const few = await timed({ ...study, replications: study.replications / 4 }, '--seed', 'few', ...queue)
    const before = pids.map((pid) => spent(pid)!)
    const asked = await timed(study, ...queue)
    const [ofServer, ...ofWorkers] = pids.map((pid, index) => spent(pid)! - before[index]!)
    for (const one of crew) one.kill('SIGKILL')
    jobs = asked.jobs
    perJob = asked.replications / jobs
    workers.push({
      workers: count,
      replicationsPerSecond: asked.replications / asked.seconds,
      serverMs: (1000 * ofServer!) / jobs,
      workerMs: (1000 * ofWorkers.reduce((sum, one) => sum + one, 0)) / jobs,
      askingMs: (1000 * (asked.spentSeconds - few.spentSeconds)) / (asked.jobs - few.jobs),
      moreMs: (1000 * (ofServer! + ofWorkers.reduce((sum, one) => sum + one, 0) + asked.spentSeconds - alone.spentSeconds)) / jobs,
      load: loadavg()[0]!,
    })
  }
  return { what: study.what, jobs, perJob, aloneMs: (1000 * alone.spentSeconds) / jobs, workers }
}

const loadBefore = loadavg()[0]!
process.stderr.write('processes with nothing between them\n')
const alone = { plain: await bare('plain', WORKERS, TURNS), runs: await bare('runs', WORKERS, TURNS) }
const server = await redisServer()
const studies: Growth['studies'][number][] = []
for (const study of [SHORT, LONG]) studies.push(await measured(server, study))
process.stderr.write('recovery\n')
const recoverySeconds = await recovery(server)
await server.stop()
rmSync(folder, { recursive: true, force: true })

const crowds: Growth['crowds'][number][] = []
for (const { workers: all } of studies) {
  const [{ workerMs: jobMs, serverMs: ofServer, askingMs }] = all as [Growth['studies'][number]['workers'][number]]
  // server and who asks work at the same time: the slower of them limits
  const serverMs = Math.max(ofServer, askingMs)
  for (const workers of [2, 10, 100, 1000]) {
    process.stderr.write(`crowd of ${workers}\n`)
    const crowd: Crowd = { workers, jobMs, serverMs }
    const [run] = await replicate(crowdLine(crowd, 1, Math.max(400, 2 * workers)), { replications: 1 }, { seed: '1', workers: 0 })
    crowds.push({ ...crowd, byLimits: jobsPerSecond(crowd), simulated: run!.outputPerHour / 3.6, enough: workersEnough(crowd) })
  }
}
const page = growthPage({ cores: availableParallelism(), loadBefore, bare: alone, studies, recoverySeconds, crowds })
if (values.page) writeFileSync(fileURLToPath(new URL('./growth.md', import.meta.url)), page)
process.stdout.write(page)
