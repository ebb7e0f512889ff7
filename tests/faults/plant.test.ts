/** A queue as a plant has it: encrypted, with a user and a password out of the environment, and machines that are not all alike. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { BIN } from '../cli/spawned.ts'
import { TOP } from '../tidy/sources.ts'
import { type Member, member, says } from './crew.ts'
import { type EncryptedServer, encryptedServer } from './encryptedServer.ts'

const WORD = 'geheim-7-Wort'
const OTHER_MACHINE = { NODE_OPTIONS: `--import ${fileURLToPath(new URL('./otherMachine.mjs', import.meta.url))}` }
const STUDY = ['sweep', 'tests/helpers/scenarios/small.yaml', '--carriers', '2..3', '--replications', '130', '--json']

describe('an encrypted queue with a user and a password', { tags: 'long' }, () => {
  let folder = ''
  let server: EncryptedServer
  let queue: string[] = []
  let entry: Record<string, string> = {}
  const all: Member[] = []
  const start = (words: readonly string[], environment: Readonly<Record<string, string>>): Member => {
    const one = member([BIN, ...words, ...queue], environment)
    all.push(one)
    return one
  }

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'plant '))
    server = await encryptedServer([
      ...['--user', 'default', 'off'],
      // no more than MACHINES.md gives a user
      ...['--user', 'plant', 'on', `>${WORD}`, '~loopwright:*', '&loopwright:*', '+@all', '-@admin', '-@dangerous', '+info'],
    ])
    queue = ['--queue', `rediss://localhost:${server.port}`]
    entry = { LOOPWRIGHT_QUEUE_USER: 'plant', LOOPWRIGHT_QUEUE_PASSWORD: WORD, LOOPWRIGHT_QUEUE_CA: server.certificate }
  })
  afterAll(async () => {
    for (const one of all) one.kill('SIGKILL')
    await server.stop()
    rmSync(folder, { recursive: true, force: true })
  })

  test('is worked for by machines whose bits agree, and by no other; the word is shown nowhere', async () => {
    const study = start([...STUDY, '--store', join(folder, 'runs')], entry)
    await says(study, /no worker of this engine/)
    const unlike = start(['work', '--workers', '1'], { ...entry, ...OTHER_MACHINE, BITS: 'other' })
    await says(
      unlike,
      /refused: a study of .* \(Node v.*\) wants engine .*: its Node or processor gives other last digits in the check runs/,
    )
    await says(study, /refused, since its Node or processor gives other last digits in the check runs: .*abacus/)
    const alike = start(['work', '--workers', '1'], { ...entry, ...OTHER_MACHINE })
    expect((await study.ended).code).toBe(0)
    const told = study.said().replaceAll(/\s+/g, ' ')
    const one = spawnSync(process.execPath, [BIN, ...STUDY, '--fresh'], { cwd: TOP, encoding: 'utf8' })
    expect(study.said()).toContain(one.stdout)
    expect(alike.said()).toContain('1 thread works for')
    for (const { child } of [unlike, alike]) expect(readFileSync(`/proc/${child.pid}/cmdline`, 'utf8')).not.toContain(WORD)
    // workers say now and then how far they are
    const info = async (): Promise<string> => {
      const asked = start(['queue', 'info'], entry)
      expect((await asked.ended).code).toBe(0)
      return asked.said()
    }
    await expect.poll(info, { timeout: 60_000 }).toMatch(/worker on .*: 1 thread, 8 jobs done, engine .*abacus/)
    expect(await info()).toMatch(/worker on .*: 1 thread, 0 jobs done, engine .*abacus/)
    expect(told).not.toContain(WORD)
    for (const each of all) expect(each.said()).not.toContain(WORD)
  })

  test('the commands of MACHINES.md do what it says', async () => {
    const page = readFileSync(join(TOP, 'packages/cli/MACHINES.md'), 'utf8')
    const commands = [...page.matchAll(/^npx loopwright (.*) --queue rediss:\/\/plant-server$/gm)].map(([, words]) =>
      words!.replace('line.yaml', 'tests/helpers/scenarios/small.yaml').split(' '),
    )
    const told: Record<string, string> = {}
    for (const words of commands) {
      const one = start([...words, ...(words.includes('carriers') ? ['--store', join(folder, 'asked')] : [])], entry)
      if (words[0] === 'work') await says(one, /works? for/)
      else {
        expect([words, (await one.ended).code]).toEqual([words, 0])
        told[words.slice(0, 2).join(' ')] = one.said().replaceAll(/\s+/g, ' ')
      }
    }
    expect(told['carriers tests/helpers/scenarios/small.yaml']).toContain('carriers')
    expect(told['queue info']).toMatch(/worker on /)
    expect(told['queue cancel']).toContain('0 waiting jobs are taken back')
    expect(told['queue retry']).toContain('0 jobs may be tried again')
  })

  test.each([
    ['without a word', { LOOPWRIGHT_QUEUE_USER: '', LOOPWRIGHT_QUEUE_PASSWORD: '' }, 'it wants a password; set LOOPWRIGHT_QUEUE_PASSWORD'],
    ['with a wrong one', { LOOPWRIGHT_QUEUE_PASSWORD: 'falsch-9' }, 'it does not take this user and password'],
    ['without who vouches', { LOOPWRIGHT_QUEUE_CA: '' }, 'LOOPWRIGHT_QUEUE_CA names the file of who vouches for it'],
  ])('lets nobody in %s, and says why', async (_, wrong, why) => {
    const one = start(['queue', 'info'], { ...entry, ...wrong })
    expect((await one.ended).code).toBe(1)
    expect(one.said().replaceAll(/\s+/g, ' ')).toContain(why)
    expect(one.said()).not.toMatch(/geheim|falsch/)
  })
})
