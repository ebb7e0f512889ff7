/**
 * Studies by a queue while faults of all kinds go on, as the command is typed: real workers, a real server behind a way that can be cut. What comes out is
 * compared with what one machine prints, byte by byte. Everything that is drawn follows from a seed; when it strikes is a matter of the machine.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { stream } from '@loopwright/stats'
import { BIN } from '../cli/spawned.ts'
import { now } from './clock.ts'
import { type Member, member, worker } from './crew.ts'
import { proxy, type Way } from './proxy.ts'
import { type RedisServer, redisServer } from './redisServer.ts'

export const KINDS = [
  'worker killed',
  'worker paused',
  'clock jumped',
  'server killed',
  'server restarted',
  'network cut',
  'network slowed',
  'network silent',
  'answers lost',
  'disk of the server full',
  'disk of the store full',
  'study killed',
  'study asked twice',
] as const
export type Kind = (typeof KINDS)[number]

export interface Plan {
  /** of everything that is drawn */
  readonly seed: string
  /** until so many jobs and so many faults are done */
  readonly jobs: number
  readonly faults: number
  /** processes, each with one thread */
  readonly workers: number
  /** replications of each number of carriers, in each study */
  readonly replications: number
  /** in this order where there are as many as kinds, then by chance */
  readonly kinds: readonly Kind[]
  /** seconds between two faults, at most */
  readonly everySeconds: number
  readonly say: (line: string) => void
}

export interface Fault {
  readonly atSeconds: number
  readonly kind: Kind
  readonly what: string
}

export interface Survived {
  readonly faults: readonly Fault[]
  readonly studies: readonly {
    readonly seed: string
    readonly jobs: number
    readonly replications: number
    readonly starts: number
    readonly same: boolean
  }[]
  readonly jobs: number
  readonly seconds: number
  /** replications that a store holds twice, or lacks */
  readonly twice: number
  readonly missing: number
}

const LINE = 'tests/helpers/scenarios/small.yaml'
const COUNTS = [2, 3, 4]
const wordsOf = (seed: string, replications: number): string[] => [
  ...[BIN, 'sweep', LINE, '--carriers', `${COUNTS[0]}..${COUNTS.at(-1)}`],
  ...['--replications', String(replications), '--seed', seed, '--json'],
]
interface Scene {
  readonly server: RedisServer
  readonly way: Way
  readonly workers: Member[]
  readonly draw: () => number
  readonly hire: () => void
  /** the process that asks now; null between two */
  asking: Member | null
  /** asks for the same at the same time; null: nobody does */
  second: Member | null
  askAgain: () => Member
}

/** What each does; gives what happened, in words. */
const STRIKE: Readonly<Record<Kind, (scene: Scene) => Promise<string>>> = {
  'worker killed': async ({ workers, draw, hire }) => {
    const [one] = workers.splice(Math.floor(draw() * workers.length), 1)
    one?.kill('SIGKILL')
    const after = Math.round(2000 * draw())
    await wait(after)
    hire()
    return `process ${one?.child.pid} by signal 9; another after ${after} ms`
  },
  'worker paused': async ({ workers, draw }) => {
    const one = workers[Math.floor(draw() * workers.length)]!
    one.kill('SIGSTOP')
    await wait(8000)
    one.kill('SIGCONT')
    return `process ${one.child.pid} for 8 s, longer than its locks last: its jobs are delivered twice`
  },
  'clock jumped': async ({ workers, draw }) => {
    const one = workers[Math.floor(draw() * workers.length)]!
    one.kill('SIGUSR2')
    return `of process ${one.child.pid}: a day on, then 25 hours back, a minute on, an hour back`
  },
  'server killed': async ({ server, draw }) => {
    const ms = Math.round(1500 * draw())
    await server.restart('SIGKILL', ms)
    return `by signal 9, back after ${ms} ms with what it had written down`
  },
  'server restarted': async ({ server, draw }) => {
    const ms = Math.round(1500 * draw())
    await server.restart('SIGTERM', ms)
    return `back after ${ms} ms`
  },
  'network cut': async ({ way, draw }) => {
    const ms = Math.round(500 + 3000 * draw())
    await way.cut(ms)
    return `all connections ended, none for ${ms} ms`
  },
  'network slowed': async ({ way, draw }) => {
    const ms = Math.round(20 + 150 * draw())
    way.slow(ms)
    await wait(3000)
    way.slow(0)
    return `${ms} ms each way for 3 s`
  },
  'network silent': async ({ way, draw }) => {
    const ms = Math.round(1000 + 6000 * draw())
    way.silent(true)
    await wait(ms)
    way.silent(false)
    return `connections stand, nothing passes for ${ms} ms`
  },
  'answers lost': async ({ way }) => {
    await way.loseAnswers(200)
    return 'what was asked was done, the answers never came, then the connections ended'
  },
  'disk of the server full': async ({ server }) => {
    server.full(true)
    await wait(3000)
    server.full(false)
    return 'its file may not grow for 3 s'
  },
  'disk of the store full': async ({ asking }) => {
    if (asking === null) return 'nobody asked just then'
    spawnSync('prlimit', ['--pid', String(asking.child.pid), '--fsize=1:unlimited'])
    await wait(1500)
    spawnSync('prlimit', ['--pid', String(asking.child.pid), '--fsize=unlimited:unlimited'])
    return 'files of the study may not grow for 1.5 s: it goes on without keeping'
  },
  'study killed': async ({ asking }) => {
    asking?.kill('SIGKILL')
    return asking === null ? 'nobody asked just then' : `process ${asking.child.pid} by signal 9; the same command again`
  },
  'study asked twice': async (scene) => {
    if (scene.second !== null || scene.asking === null) return 'it was already, or nobody asked just then'
    scene.second = scene.askAgain()
    void scene.second.ended.then(() => {
      scene.second = null
    })
    return `process ${scene.second.child.pid} asks for the same at the same time`
  },
}

/** What a command says that could not begin, since a fault was there before it: it is given again. */
const NOBODY_ANSWERS = /there is no queue to be had/

/** Carries out the plan. */
export async function survive(plan: Plan): Promise<Survived> {
  const { say } = plan
  const draw = stream(plan.seed, 0, 'faults')
  const folder = mkdtempSync(join(tmpdir(), 'faults '))
  const server = await redisServer()
  const way = await proxy(server.port)
  const workers: Member[] = []
  let over = false
  const hire = (): void => {
    const one = worker(way.port)
    workers.push(one)
    // that could not begin, as nobody answered: begun again, as a service would
    void one.ended.then(({ code }) => {
      if (over || code === null || !workers.includes(one) || !NOBODY_ANSWERS.test(one.said())) return
      workers.splice(workers.indexOf(one), 1)
      hire()
    })
  }
  for (let count = 0; count < plan.workers; count += 1) hire()
  const queue = ['--queue', `redis://127.0.0.1:${way.port}`]
  const scene: Scene = { server, way, workers, draw, hire, asking: null, second: null, askAgain: () => member(['-e', '']) }
  const started = now()
  const seconds = (): number => (now() - started) / 1000
  const faults: Fault[] = []
  const studies: Survived['studies'][number][] = []
  let jobs = 0
  let twice = 0
  let missing = 0
  const striking = (async () => {
    while (!over) {
      await wait(1000 * plan.everySeconds * draw())
      while (scene.asking === null && !over) await wait(20)
      await wait(1500 * draw())
      if (over || scene.asking === null) continue
      const kind = plan.kinds[faults.length] ?? plan.kinds[Math.floor(draw() * plan.kinds.length)]!
      const atSeconds = seconds()
      const what = await STRIKE[kind](scene)
      faults.push({ atSeconds, kind, what })
      say(`${atSeconds.toFixed(1).padStart(7)} s  ${kind}: ${what}`)
    }
  })()
  try {
    while (jobs < plan.jobs || faults.length < plan.faults) {
      const seed = `${plan.seed}-${studies.length}`
      const store = join(folder, seed)
      const words = wordsOf(seed, plan.replications)
      scene.askAgain = () => member([...words, ...queue, '--store', join(folder, `${seed}-second`)])
      let starts = 0
      let printed = ''
      for (;;) {
        starts += 1
        scene.asking = member([...words, ...queue, '--store', store])
        const { code, signal } = await scene.asking.ended
        printed = scene.asking.said()
        scene.asking = null
        if (code === 0) break
        if (signal !== 'SIGKILL' && !NOBODY_ANSWERS.test(printed))
          throw new Error(`the study ended by ${code ?? signal}:\n${printed.slice(-2000)}`)
      }
      const alone = member([...words, '--fresh'])
      const { code: ended } = await alone.ended
      const held = heldIn(store)
      // what a full store did not take is right all the same, and is not in it
      const full = faults.some(({ kind }) => kind === 'disk of the store full')
      twice += held.twice
      if (!full) missing += held.missing
      jobs += held.jobs
      const same = ended === 0 && documentOf(printed) === documentOf(alone.said())
      studies.push({ seed, jobs: held.jobs, replications: held.replications, starts, same })
      say(
        `${seconds().toFixed(1).padStart(7)} s  study ${studies.length}: ${held.jobs} jobs, started ${starts} times, ${same ? 'the same bytes as one machine' : 'OTHER BYTES'}`,
      )
      rmSync(store, { recursive: true, force: true })
      if (!same) break
    }
  } finally {
    over = true
    await striking.catch(() => {})
    for (const one of [...workers, ...(scene.second === null ? [] : [scene.second]), ...(scene.asking === null ? [] : [scene.asking])])
      one.kill('SIGKILL')
    await way.close()
    await server.stop()
    rmSync(folder, { recursive: true, force: true })
  }
  return { faults, studies, jobs, seconds: seconds(), twice, missing }
}

/** Of what a process said on both streams: the document, which begins at the start of a line. */
function documentOf(said: string): string {
  const from = said.search(/^\{/m)
  const to = said.lastIndexOf('\n}') + 2
  return `${said.slice(from, to)}\n`
}

/** What a store holds: its jobs, and whether any replication is there twice, or none between two. */
export function heldIn(store: string): { jobs: number; replications: number; twice: number; missing: number } {
  const held = new Map<string, [number, number][]>()
  let names: string[] = []
  try {
    names = readdirSync(store, { recursive: true, encoding: 'utf8' })
  } catch {
    // nothing was kept
  }
  for (const name of names) {
    const match = /^(.*)[/\\](\d+)-(\d+)\.runs$/.exec(name)
    if (match !== null) held.set(match[1]!, [...(held.get(match[1]!) ?? []), [Number(match[2]), Number(match[3])]])
  }
  let [jobs, replications, twice, missing] = [0, 0, 0, 0]
  for (const ranges of held.values()) {
    let at = 0
    for (const [from, to] of ranges.sort((a, b) => a[0] - b[0])) {
      twice += Math.max(0, at - from)
      missing += Math.max(0, from - at)
      at = Math.max(at, to)
      jobs += 1
      replications += to - from
    }
  }
  return { jobs, replications, twice, missing }
}
