/** A notebook that is being written, as it is typed: served, and brought up to date with each save. Over 300 lines because one window tells of every kind of save. */
import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, unlinkSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, describe, expect, test } from 'vitest'
import { TEN_ZONES } from '../helpers/scenarioTexts.ts'
import { type Spawned, start } from './spawned.ts'

const folder = mkdtempSync(join(tmpdir(), 'loopwright-watch-'))
afterAll(() => rmSync(folder, { recursive: true }))

const SCENARIO = TEN_ZONES.replace(
  'work: { fit: 6 s ± 20 % }',
  'work: { fit: { kind: empirical, file: times.csv, column: seconds, unit: s } }',
)
const TABLE = `seconds\n${Array.from({ length: 40 }, (_, index) => 5 + (index % 5)).join('\n')}\n`
const STUDY = `import { notebook } from '@loopwright/notebook'
import { words } from './words.ts'

export default notebook({ title: 'A', scenario: 'line.yaml' }, async ({ scenario, sweep, story, show, prose }) => {
  const first = await sweep({ carriers: [2, 3], replications: 2 })
  show(story(first).answer)
  prose(\`First words: \${words}.\`)
  const second = await sweep({ carriers: [4], replications: 2 })
  prose(\`Four carriers make \${second.counts[0].units.length} windows.\`)
})
`

interface State {
  readonly version: number
  readonly running: boolean
  readonly note: string
  readonly fault: string | null
  readonly since: string | null
  readonly parts: readonly { readonly state: string; readonly place: string; readonly ids: readonly string[] }[]
}

interface Window {
  readonly states: State[]
  readonly last: () => State | undefined
  readonly until: (what: string, holds: (state: State) => boolean) => Promise<State>
  readonly page: () => Promise<string>
  readonly close: () => void
}

let running: { spawned: Spawned; windows: Window[] } | null = null
afterEach(async () => {
  for (const window of running?.windows ?? []) window.close()
  running?.spawned.interrupt()
  await running?.spawned.ended
  running = null
})

let homes = 0
/** A folder of its own, and the command that serves its notebook. */
async function served(text = STUDY): Promise<{ at: string; address: string; open: () => Promise<Window>; spawned: Spawned }> {
  homes += 1
  const at = join(folder, String(homes))
  mkdirSync(at)
  for (const [name, content] of Object.entries({
    'line.yaml': SCENARIO,
    'times.csv': TABLE,
    'words.ts': "export const words = 'one'\n",
    'study.ts': text,
  }))
    writeFileSync(join(at, name), content)
  const spawned = start(['notebook', 'study.ts', '--watch', '--workers', '1'], at)
  running = { spawned, windows: [] }
  const address = /http:\S+/.exec(await spawned.saidOnOut('Page: http'))![0]
  return { at, address, spawned, open: async () => await openWindow(address) }
}

async function openWindow(address: string): Promise<Window> {
  const stop = new AbortController()
  const states: State[] = []
  let wake: () => void = () => {}
  const answer = await fetch(`${address}events`, { signal: stop.signal })
  const read = async (): Promise<void> => {
    let text = ''
    const decoder = new TextDecoder()
    for await (const part of answer.body!) {
      text += decoder.decode(part as Uint8Array, { stream: true })
      const events = text.split('\n\n')
      text = events.pop()!
      for (const event of events) if (event.startsWith('event: state')) states.push(JSON.parse(/data: (.*)/.exec(event)![1]!) as State)
      wake()
    }
  }
  void read().catch(() => wake())
  const window: Window = {
    states,
    last: () => states.at(-1),
    until: async (what, holds) => {
      for (;;) {
        const now = states.at(-1)
        if (now !== undefined && holds(now)) return now
        if (stop.signal.aborted) throw new Error(`${what} did not come`)
        await new Promise<void>((done) => {
          wake = done
        })
      }
    },
    page: async () => await (await fetch(`${address}page`)).text(),
    close: () => stop.abort(),
  }
  running!.windows.push(window)
  return window
}

const fresh = ({ running: goes, fault, parts }: State): boolean =>
  !goes && fault === null && parts.length > 0 && parts.every(({ state }) => state === 'fresh')
const made =
  (text: string) =>
  (state: State): boolean =>
    fresh(state) && state.note.includes(text)

describe('only what changed is done again', () => {
  test('prose: no study; a study: that one; the scenario and its table: all', async () => {
    const { at, open } = await served()
    const window = await open()
    await window.until('the first run', made('2 studies made'))
    expect(await window.page()).toContain('First words: one.')

    writeFileSync(join(at, 'study.ts'), STUDY.replace('First words', 'Other words'))
    await window.until('prose', made('2 studies as before'))
    expect(await window.page()).toContain('Other words: one.')

    writeFileSync(join(at, 'words.ts'), "export const words = 'two'\n")
    await window.until(
      'an import',
      (state) => fresh(state) && state.version > 0 && window.states.length > 0 && state.note.includes('as before'),
    )
    await expect.poll(() => window.page()).toContain('Other words: two.')

    const seen = window.states.length
    writeFileSync(join(at, 'study.ts'), STUDY.replace('carriers: [4], replications: 2', 'carriers: [4], replications: 3'))
    await window.until('one study', made('1 study made, 1 as before'))
    expect(await window.page()).toContain('Four carriers make 3 windows.')
    const stale = window.states.slice(seen).flatMap(({ parts }) => parts.filter(({ state }) => state === 'stale').map(({ place }) => place))
    expect(new Set(stale)).not.toContain('line 5')
    expect(new Set(stale)).toContain('line 9')

    writeFileSync(join(at, 'line.yaml'), SCENARIO.replace('reaction: 0 s', 'reaction: 0.5 s'))
    await window.until('the scenario', made('2 studies made'))
    writeFileSync(join(at, 'times.csv'), TABLE.replaceAll('5', '9'))
    await window.until('the table', (state) => made('2 studies made')(state) && window.states.filter(made('2 studies made')).length >= 3)
  })
})

describe('whatever an editor does', () => {
  test('another file in its place, half a file, no program, no scenario: told, and mended by the next save', async () => {
    const { at, open } = await served()
    const window = await open()
    await window.until('the first run', fresh)
    const path = join(at, 'study.ts')
    const put = (text: string): void => {
      writeFileSync(`${path}~`, text)
      renameSync(`${path}~`, path)
    }
    put(STUDY.replace('First', 'Renamed'))
    await expect.poll(() => window.page()).toContain('Renamed words')

    writeFileSync(path, STUDY.slice(0, STUDY.length / 2))
    writeFileSync(path, STUDY.replace('First', 'Whole'))
    await expect.poll(() => window.page()).toContain('Whole words')
    await window.until('the whole file', fresh)

    put(STUDY.replace('(first).answer)', '(first).answer))'))
    const wrong = await window.until('what is wrong', ({ fault, running: goes }) => fault !== null && !goes)
    expect(wrong.fault).toMatch(/^study\.ts:6:28\n/)
    expect(wrong.parts.every(({ state }) => state === 'stale')).toBe(true)
    expect(await window.page()).toContain('Whole words')

    put(STUDY)
    await window.until('mended', fresh)
    unlinkSync(join(at, 'line.yaml'))
    expect((await window.until('no scenario', ({ fault }) => fault !== null)).fault).toContain('there is no file "line.yaml"')
    writeFileSync(join(at, 'line.yaml'), SCENARIO.replace('speed: 30', 'sped: 30'))
    expect((await window.until('a wrong scenario', ({ fault }) => fault?.includes('sped') === true)).fault).toContain('line.yaml:6:')
    writeFileSync(join(at, 'line.yaml'), SCENARIO)
    await window.until('the scenario again', fresh)

    unlinkSync(join(at, 'words.ts'))
    expect((await window.until('no import', ({ fault }) => fault !== null)).fault).toContain('study.ts:2:')
    writeFileSync(join(at, 'words.ts'), "export const words = 'back'\n")
    await window.until('the import again', fresh)
    expect(await window.page()).toContain('First words: back.')
  })

  test('a part that fails takes down what needs it, and no other', async () => {
    const { at, open } = await served()
    const window = await open()
    await window.until('the first run', fresh)
    writeFileSync(join(at, 'study.ts'), STUDY.replace('carriers: [2, 3], replications: 2', 'carriers: [2, 3], replication: 2'))
    const { parts } = await window.until(
      'what failed',
      ({ running: goes, parts: all }) => !goes && all.some(({ state }) => state === 'failed'),
    )
    expect(parts.map(({ state }) => state)).toEqual(['failed', 'waiting', 'fresh', 'fresh', 'fresh'])
    expect(await window.page()).toContain('Did you mean “replications”?'.replace(/[“”]/g, '&quot;'))
  })

  test('a part that never ends is named with its beginning; the page is served, a save ends it, and so does Ctrl-C', async () => {
    const { at, address, open, spawned } = await served()
    const window = await open()
    await window.until('the first run', fresh)
    const path = join(at, 'study.ts')
    const endless = STUDY.replace('  prose(`First', '  while (true) {}\n  prose(`First')
    const isStuck = ({ running: goes, since, parts }: State): boolean => goes && since !== null && parts[2]?.state === 'running'
    writeFileSync(path, endless)
    const stuck = await window.until('the part that never ends', isStuck)
    expect(stuck.parts.map(({ state, place }) => `${place} ${state}`)).toContain('line 7 running')
    expect(stuck.since).toMatch(/^\d{4}-\d\d-\d\dT/)
    expect(await window.page()).toContain('Four carriers make 2 windows.')
    writeFileSync(path, STUDY.replace('First', 'Mended'))
    await expect.poll(() => window.page()).toContain('Mended words: one.')
    await window.until('mended', fresh)
    writeFileSync(path, STUDY.replace('  prose(`First', '  process.exit(3)\n  prose(`First'))
    expect((await window.until('the end of the thread', ({ fault }) => fault !== null)).fault).toContain('ended its thread')
    writeFileSync(path, endless)
    await window.until('the same again', isStuck)
    window.close()
    spawned.interrupt()
    expect((await spawned.ended).code).toBe(0)
    await expect(fetch(address)).rejects.toThrow()
  })

  test('50 saves in a row: the last one is shown, to two windows', async () => {
    const { at, open } = await served()
    const [one, other] = [await open(), await open()]
    await one.until('the first run', fresh)
    for (let save = 1; save <= 50; save += 1) {
      writeFileSync(join(at, 'study.ts'), STUDY.replace('First words', `Save ${save}`))
      await new Promise((done) => setTimeout(done, 100))
    }
    await expect.poll(() => one.page()).toContain('Save 50:')
    const last = await one.until('the last', fresh)
    expect(await other.until('the same', ({ version }) => version === last.version)).toEqual(last)
  })
})

describe('nothing but its own page, to nobody but this machine', () => {
  const asked = (
    address: string,
    path: string,
    headers: Record<string, string> = {},
    method = 'GET',
  ): Promise<{ code: number; text: string }> =>
    new Promise((done, fail) => {
      const { hostname, port } = new URL(address)
      const sent = request({ hostname, port, path, headers, method }, (answer) => {
        let text = ''
        answer.setEncoding('utf8').on('data', (part: string) => {
          text += part
        })
        answer.on('end', () => done({ code: answer.statusCode ?? 0, text }))
      })
      sent.on('error', fail)
      sent.end()
    })

  test('host, origin, method and path are looked at; Ctrl-C ends it', async () => {
    const { at, address, open, spawned } = await served()
    await (await open()).until('the first run', fresh)
    const port = new URL(address).port
    expect(new URL(address).hostname).toBe('127.0.0.1')
    for (const host of [`127.0.0.1:${port}`, `localhost:${port}`]) expect((await asked(address, '/', { host })).code).toBe(200)
    for (const headers of [
      { host: `elsewhere.example:${port}` },
      { host: '127.0.0.1' },
      { origin: 'http://elsewhere.example' },
      { origin: 'null' },
      { origin: `https://127.0.0.1:${port}` },
      { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' },
    ])
      for (const path of ['/', '/page', '/events']) expect((await asked(address, path, headers)).code, JSON.stringify(headers)).toBe(403)
    for (const path of [
      '/study.ts',
      '/line.yaml',
      '/../line.yaml',
      '/%2e%2e/line.yaml',
      '/page/../study.ts',
      `/${at}/study.ts`,
      '//etc/passwd',
    ]) {
      const { code, text } = await asked(address, path)
      expect([path, code]).toEqual([path, 404])
      expect(text).not.toContain('format')
    }
    expect((await asked(address, '/', {}, 'POST')).code).toBe(405)
    running!.windows[0]!.close()
    spawned.interrupt()
    expect((await spawned.ended).code).toBe(0)
    await expect(asked(address, '/')).rejects.toThrow('ECONNREFUSED')
    expect(readFileSync(join(at, 'study.ts'), 'utf8')).toBe(STUDY)
  })

  test('what a scenario and a notebook say cannot run in the window or the page', async () => {
    const hostile = '</script><script>parent.hurt = 1</script><img src=x onerror="parent.hurt = 1">'
    const { at, open } = await served()
    writeFileSync(join(at, 'line.yaml'), SCENARIO.replace('How many carriers do ten zones need?', `'${hostile}'`))
    writeFileSync(
      join(at, 'study.ts'),
      STUDY.replace('First words', hostile).replace('carriers: [4]', `[\`${hostile}\`]: 1, carriers: [4]`),
    )
    const window = await open()
    await window.until('both', ({ running: goes, parts }) => !goes && parts.some(({ state }) => state === 'failed'))
    const page = await window.page()
    expect(page).toContain('&lt;/script')
    expect(page).not.toContain(hostile)
    expect(page).not.toContain('<img src=x')
  })
})
