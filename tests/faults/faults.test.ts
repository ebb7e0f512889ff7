/** A share of `npm run faults`: each kind of fault is tried there; here those that cost little, on one study that is asked for by the command as typed. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { setTimeout as wait } from 'node:timers/promises'
import { BIN } from '../cli/spawned.ts'
import { cancelQueue, queueState } from '../../packages/study/src/queue/queueState.ts'
import { beforeAll, describe, expect, test, type TestContext } from 'vitest'
import { type Member, member, says, worker } from './crew.ts'
import { faultPage } from './faultPage.ts'
import { redisServer } from './redisServer.ts'
import { heldIn, survive } from './survive.ts'

const POISON = fileURLToPath(new URL('./poison.mjs', import.meta.url))
/** what a study says whose jobs wait: looking at the queue until then would cost more than the study */
const NOBODY = /no worker of this engine/

/** A server, a folder and processes of one test, ended with it. */
async function scene({ onTestFinished }: Pick<TestContext, 'onTestFinished'>) {
  const undo: (() => unknown)[] = []
  onTestFinished(async () => {
    for (const each of undo.reverse()) await each()
  })
  const server = await redisServer()
  const folder = mkdtempSync(join(tmpdir(), 'queue '))
  undo.push(
    () => server.stop(),
    () => rmSync(folder, { recursive: true, force: true }),
  )
  const hired = (one: Member): Member => {
    undo.push(() => one.kill('SIGKILL'))
    return one
  }
  const place = {
    address: { host: '127.0.0.1', port: server.port, database: 0, encrypted: false },
    access: { user: null, password: null, authorities: null },
  }
  const study = (...words: string[]): Member =>
    hired(
      member([
        BIN,
        'sweep',
        'tests/helpers/scenarios/small.yaml',
        ...words,
        '--queue',
        `redis://127.0.0.1:${server.port}`,
        '--store',
        folder,
      ]),
    )
  return { server, place, folder, study, hired }
}

// after a change of the source each of them would make the bundle anew
beforeAll(() => void spawnSync(process.execPath, [BIN, '--version']))

// they wait for locks and servers most of the time
describe.concurrent('a study by a queue under faults', { tags: 'long' }, () => {
  test('prints the bytes of one machine, and keeps each replication once', async () => {
    const plan = {
      seed: '7',
      jobs: 30,
      faults: 5,
      workers: 2,
      replications: 500,
      kinds: ['worker killed', 'server killed', 'network cut', 'study killed', 'answers lost'],
      everySeconds: 0.4,
      say: () => {},
    } as const
    const survived = await survive(plan)
    expect(survived.studies.map(({ same }) => same)).toEqual(survived.studies.map(() => true))
    expect([survived.twice, survived.missing]).toEqual([0, 0])
    expect(survived.jobs).toBeGreaterThanOrEqual(30)
    expect(survived.faults.length).toBeGreaterThanOrEqual(5)
    expect(faultPage(plan, survived)).toContain(`| faults | ${survived.faults.length} |`)
  })

  test('a job that ends every process that takes it is set aside and named; all others are in and kept', async (context) => {
    const { server, place, folder, study, hired } = await scene(context)
    let over = false
    // before its processes are ended, or others would be hired in their place
    context.onTestFinished(() => {
      over = true
    })
    let hires = 0
    const keepHired = async (): Promise<void> => {
      while (!over) {
        hires += 1
        const one = hired(worker(server.port, { NODE_OPTIONS: `--import ${POISON}` }))
        await one.ended
      }
    }
    void keepHired()
    const words = ['--carriers', '3..3', '--replications', '200', '--seed', 'poison']
    const asked = study(...words)
    const { code } = await asked.ended
    const said = asked.said().replaceAll(/\s+/g, ' ')
    expect(said).toContain(
      'replications 50 to 99 with 3 carriers, seed poison, are set aside: alone in a process, it ended that by signal SIGKILL',
    )
    expect(code).toBe(1)
    // it took one worker with it, no other job and no other worker
    expect(hires).toBe(2)
    expect((await queueState(place)).queues.reduce((sum, one) => sum + one.setAside, 0)).toBe(1)
    expect(heldIn(folder)).toMatchObject({ replications: 150, twice: 0, missing: 50 })
    // the same command does not try it again by itself
    const again = study(...words)
    expect((await again.ended).code).toBe(1)
    expect(again.said().replaceAll(/\s+/g, ' ')).toContain('are set aside')
    expect(hires).toBe(2)
  })

  test('Ctrl-C takes back what nobody has begun, and waits for none of it', async (context) => {
    const { place, study } = await scene(context)
    const asked = study('--carriers', '2..4', '--replications', '3000')
    const waiting = async (): Promise<number> => (await queueState(place)).queues.reduce((sum, one) => sum + one.waiting, 0)
    await says(asked, NOBODY)
    while ((await waiting()) < 3) await wait(100)
    asked.kill('SIGINT')
    // nobody works: who waited for an answer would wait for ever
    expect((await asked.ended).code).toBe(130)
    expect(await waiting()).toBe(0)
  })

  test('what waits can be taken back: the study is told, ends, and does not ask again', async (context) => {
    const { place, study } = await scene(context)
    const asked = study('--carriers', '2..4', '--replications', '3000')
    const waiting = async (): Promise<number> => (await queueState(place)).queues.reduce((sum, one) => sum + one.waiting, 0)
    await says(asked, NOBODY)
    while ((await waiting()) < 3) await wait(100)
    expect(await cancelQueue(place)).toBeGreaterThan(2)
    expect((await asked.ended).code).toBe(1)
    expect(asked.said().replaceAll(/\s+/g, ' ')).toContain('the jobs of this study were taken back (loopwright queue cancel, at 127.0.0.1:')
    expect(await waiting()).toBe(0)
    // the next one is another matter
    await says(study('--carriers', '3..3', '--replications', '60'), NOBODY)
    while ((await waiting()) < 1) await wait(100)
  })

  test('workers end when they have had nothing to do for as long as they were told', async (context) => {
    const { server, hired } = await scene(context)
    const one = hired(worker(server.port, {}, '--idle', '0.5'))
    expect((await one.ended).code).toBe(0)
    expect(one.said()).toContain('0 replications in 0 jobs.')
  })
})
