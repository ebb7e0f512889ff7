/**
 * A real Firefox for the tests of the page, by WebDriver BiDi (W3C), which Debian's own speaks; playwright-core asks it for a command that it does not know.
 */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const NAMES = ['firefox-esr', 'firefox']

/** The WebSocket of Node 22; of Node 20 the one that playwright-core brings with it. */
interface Socket {
  onopen: (() => void) | null
  onerror: ((event: unknown) => void) | null
  onmessage: ((event: { readonly data: unknown }) => void) | null
  send: (text: string) => void
  close: () => void
}

function socketTo(address: string): Socket {
  const own = (globalThis as { WebSocket?: new (address: string) => Socket }).WebSocket
  const brought = createRequire(import.meta.url)('playwright-core/lib/utilsBundle') as { ws: new (address: string) => Socket }
  return new (own ?? brought.ws)(address)
}

/** Where Firefox is: FIREFOX_PATH, else by its names; null: it is not here. */
export function findFirefox(): string | null {
  const named = process.env.FIREFOX_PATH
  if (named !== undefined && named !== '') return named
  return NAMES.find((name) => spawnSync(name, ['--version'], { stdio: 'ignore' }).status === 0) ?? null
}

export interface FirefoxPage {
  readonly open: (address: string) => Promise<void>
  readonly size: (width: number, height: number) => Promise<void>
  /** The value of an expression, by way of JSON. */
  readonly read: <T>(expression: string) => Promise<T>
  /** what stood in the console or was thrown */
  readonly complaints: readonly string[]
  readonly close: () => Promise<void>
}

type Fields = Readonly<Record<string, unknown>>

export async function startFirefox(path: string): Promise<FirefoxPage> {
  const profile = mkdtempSync(join(tmpdir(), 'loopwright-firefox-'))
  const words = ['--headless', '--no-remote', '--profile', profile, '--remote-debugging-port', '0']
  const firefox = spawn(path, words, { stdio: ['ignore', 'ignore', 'pipe'], env: { ...process.env, HOME: profile } })
  const socket = socketTo(`${await listening(firefox)}/session`)
  await new Promise<void>((done, fail) => {
    socket.onopen = done
    socket.onerror = () => fail(new Error('Firefox does not answer'))
  })
  const waiting = new Map<number, (answer: Fields) => void>()
  const complaints: string[] = []
  let last = 0
  socket.onmessage = ({ data }) => {
    const said = JSON.parse(String(data)) as Fields
    if (typeof said.id === 'number') waiting.get(said.id)?.(said)
    else if (said.method === 'log.entryAdded') complaints.push(String((said.params as Fields).text))
  }
  const ask = async (method: string, params: Fields): Promise<Fields> => {
    last += 1
    const id = last
    const answer = await new Promise<Fields>((done) => {
      waiting.set(id, done)
      socket.send(JSON.stringify({ id, method, params }))
    })
    if (answer.type === 'error') throw new Error(`${method}: ${String(answer.message)}`)
    return answer.result as Fields
  }
  await ask('session.new', { capabilities: {} })
  await ask('session.subscribe', { events: ['log.entryAdded'] })
  const tree = (await ask('browsingContext.getTree', {})) as { contexts: { context: string }[] }
  const { context } = tree.contexts[0]!
  return {
    complaints,
    open: async (url) => void (await ask('browsingContext.navigate', { context, url, wait: 'complete' })),
    size: async (width, height) => void (await ask('browsingContext.setViewport', { context, viewport: { width, height } })),
    read: async <T>(expression: string) => {
      const given = await ask('script.evaluate', {
        expression: `Promise.resolve(${expression}).then((value) => JSON.stringify(value))`,
        target: { context },
        awaitPromise: true,
      })
      if (given.type === 'exception') throw new Error(String((given.exceptionDetails as Fields).text))
      return JSON.parse(String((given.result as Fields).value)) as T
    },
    close: async () => {
      const gone = new Promise((done) => firefox.once('exit', done))
      await ask('browser.close', {}).catch(() => firefox.kill())
      socket.close()
      await gone
      rmSync(profile, { recursive: true, force: true })
    },
  }
}

/** The address that it says it listens at. */
async function listening(firefox: ChildProcess): Promise<string> {
  let said = ''
  return await new Promise((done, fail) => {
    firefox.stderr!.on('data', (part: Buffer) => {
      said += part.toString()
      const found = /WebDriver BiDi listening on (ws:\/\/\S+)/.exec(said)
      if (found !== null) done(found[1]!)
    })
    firefox.once('error', fail)
    firefox.once('exit', (code) => fail(new Error(`Firefox ended with ${code}: ${said.slice(-400)}`)))
  })
}
