/** Every command that runs studies, by shares and by a queue: the same document as from one machine. */
import { readFileSync } from 'node:fs'
import { memoryStore, type Store } from '@loopwright/study/machine'
import { workAtQueue } from '@loopwright/study/queue'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { main } from '../../packages/cli/src/main.ts'
import { program } from '../../packages/cli/src/program.ts'
import { decisionOf } from '../helpers/decisionText.ts'
import { memoryShell } from '../helpers/memoryShell.ts'
import { SMALL_LINE } from '../helpers/scenarioTexts.ts'
import { shortShift } from '../helpers/shortShift.ts'
import { now } from './clock.ts'
import { type RedisServer, redisServer } from './redisServer.ts'

/** alternatives in files of their own */
const DECISION = 'scenarios/base-line-decision/base-line.decision.yaml'
/** of a line whose shifts take no time to run */
const SMALL_DECISION = 'small.decision.yaml'
const times = `task,seconds\n${Array.from({ length: 24 }, (_, index) => `fit,${30 + ((index * 7) % 11)}`).join('\n')}\n`
const FILES: Record<string, string> = {
  'small.yaml': SMALL_LINE,
  [SMALL_DECISION]: decisionOf('small.yaml'),
  'skeleton.yaml': readFileSync('scenarios/ten-zone-learning-loop.yaml', 'utf8'),
  'complete.yaml': readFileSync('scenarios/ten-zone-learning-loop.yaml', 'utf8'),
  'data/times.csv': times,
  'weeks.csv': 'week,units,shifts\nW1,3170,10\nW2,3205,10\nW3,2540,8\n',
  'stations.csv': 'station,seconds,n,sd\nS6,66.2,40,2.6\n',
}
FILES[DECISION] = readFileSync(DECISION, 'utf8')
// what is told of short shifts is the same alone and shared, or is not, as that of long ones
for (const file of [
  'scenarios/base-line-decision/push-line.yaml',
  'scenarios/base-line-decision/guided-vehicles.yaml',
  'scenarios/outdoor-unit-base-line.yaml',
])
  FILES[file] = shortShift(readFileSync(file, 'utf8'))

const few = (count: number): string[] => ['--replications', String(count)]
/** by command; the rounds that shares take: one for each decision on the way */
const STUDIES: readonly (readonly [words: readonly string[], rounds: number])[] = [
  [['run', 'small.yaml', ...few(20)], 1],
  [['sweep', 'small.yaml', '--carriers', '2..4', ...few(20)], 1],
  [['carriers', 'small.yaml', '--carriers', '3..4', '--at-most', '40'], 4],
  [['forecast', 'small.yaml', ...few(20)], 1],
  [['forecast', 'skeleton.yaml', '--data', 'data', '--draws', '6', ...few(12)], 2],
  [['compare', 'small.yaml', '--set', 'more: carriers.count=5', ...few(12)], 1],
  [['grid', 'small.yaml', '--set', 'drive.speed=10,12 m/min', '--carriers', '3..4', ...few(6)], 1],
  [['order', 'small.yaml', '--move', 'B', '--zones', 'Z04..Z06', '--check-replications', '6'], 3],
  [['drivers', 'small.yaml', ...few(6)], 1],
  [['steady', 'small.yaml', '--runs', '6'], 1],
  [['losses', 'small.yaml', ...few(6)], 2],
  [['assemble', 'skeleton.yaml', '--data', 'data', '--write', 'complete.yaml', ...few(6)], 1],
  [['payback', DECISION, ...few(2)], 1],
  [['criteria', SMALL_DECISION, ...few(2)], 1],
  [['screen', SMALL_DECISION, ...few(2)], 1],
  [['promise', SMALL_DECISION, ...few(12)], 3],
  [['acceptance', SMALL_DECISION, ...few(40)], 2],
  [['trial', SMALL_DECISION, '--counts', '20', ...few(40)], 2],
  [['followup', DECISION, '--weeks', 'weeks.csv', '--stations', 'stations.csv', ...few(12)], 2],
]

async function typed(words: readonly string[], store: Store | null = null) {
  const shell = memoryShell(FILES)
  const code = await main([...words, '--json'], { ...shell, now, ...(store === null ? {} : { openStore: async () => store }) })
  return { code, ...shell.said }
}

/** carried out by the code of payback and acceptance: tried by the queue alone */
const LIKE_OTHERS = ['criteria', 'screen', 'trial']

const whole = new Map<string, Promise<string>>()
const alone = (words: readonly string[]): Promise<string> => {
  const key = words.join(' ')
  const told = whole.get(key) ?? typed([...words, '--fresh']).then(({ out }) => out)
  whole.set(key, told)
  return told
}

test('no command with a share or a queue is missing here, but notebooks', () => {
  const root = program(memoryShell(), 'loopwright', () => {})
  const shared = root.commands
    .filter((one) => one.options.some(({ long, hidden }) => long === '--part' && !hidden))
    .map((one) => one.name())
  expect(new Set([...STUDIES.map(([[name]]) => name!), 'notebook'])).toEqual(new Set(shared))
})

test.each([
  ['--queue', 'redis://plant-server'],
  ['--part', '1/2'],
])('one run is told by itself: trace with %s', async (...words) => {
  expect(await typed(['trace', 'small.yaml', ...words])).toMatchObject({ code: 2, err: expect.stringContaining('One run is told') })
})

describe('by shares', { tags: 'long' }, () => {
  test.each(STUDIES.filter(([[name]]) => !LIKE_OTHERS.includes(name!)))('%j in %i rounds', async (words, rounds) => {
    const store = memoryStore()
    const told: string[] = []
    for (let round = 1; round <= rounds; round += 1)
      for (const part of ['1/2', '2/2']) {
        const { code, out, err } = await typed([...words, '--part', part], store)
        expect([code, err]).toEqual([0, expect.any(String)])
        told.push(out)
      }
    expect(told[0]).toBe('')
    const { kept } = store.report
    expect((await typed(words, store)).out).toBe(await alone(words))
    // shares had run all that the study needs
    expect(store.report.kept).toBe(kept)
  })
})

describe('by a queue', { tags: 'long' }, () => {
  let server: RedisServer
  const ended = new AbortController()
  let work: Promise<unknown>
  beforeAll(async () => {
    server = await redisServer()
    const address = { host: '127.0.0.1', port: server.port, database: 0, encrypted: false }
    const access = { user: null, password: null, authorities: null }
    work = workAtQueue({ address, access }, { threads: 1, signal: ended.signal, say: () => {}, now, idleSeconds: null })
  })
  afterAll(async () => {
    ended.abort()
    await work
    await server.stop()
  })

  test.each(STUDIES)('%j', async (words) => {
    const { code, out, err } = await typed([...words, '--queue', `redis://127.0.0.1:${server.port}`], memoryStore())
    expect([code, err]).toEqual([0, expect.any(String)])
    expect(out).toBe(await alone(words))
  })
})
