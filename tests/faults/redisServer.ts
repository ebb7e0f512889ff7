/** A server of one's own for a test: on a free port, in a folder of its own, ended by its process id. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { createConnection, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'

export interface RedisServer {
  readonly port: number
  /** now */
  readonly pid: number
  /** Ends it and starts it again on the same port with what it kept; by `SIGKILL` without a moment to write. */
  restart(signal: 'SIGKILL' | 'SIGTERM', downMs: number): Promise<void>
  /** Lets no file grow, as on a full disk, or lets it again. */
  full(is: boolean): void
  stop(): Promise<void>
}

/** Where the server is; a test of the queue fails without it. */
function redisProgram(): string {
  const found = (process.env.PATH ?? '').split(delimiter).map((folder) => join(folder, 'redis-server'))
  const program = found.find((file) => existsSync(file))
  if (program === undefined)
    throw new Error(
      'there is no redis-server here, which the tests of the queue need: apt-get install redis-server (Debian), or put it on PATH',
    )
  return program
}

export async function freePort(): Promise<number> {
  return await new Promise((resolve, reject) => {
    const probe = createServer()
    probe.on('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      const port = typeof address === 'object' && address !== null ? address.port : 0
      probe.close(() => resolve(port))
    })
  })
}

/**
 * Starts a server that writes down all that it is told.
 *
 * @param more  further words of its command line
 */
export async function redisServer(more: readonly string[] = []): Promise<RedisServer> {
  const folder = mkdtempSync(join(tmpdir(), 'redis '))
  const port = await freePort()
  const ports = more.includes('--tls-port') ? [] : ['--port', String(port)]
  const words = [
    ...ports,
    '--bind',
    '127.0.0.1',
    '--dir',
    folder,
    '--save',
    '',
    '--appendonly',
    'yes',
    '--appendfsync',
    'everysec',
    ...more,
  ]
  let child = await begin(words, portOf(more) ?? port)
  return {
    port: portOf(more) ?? port,
    get pid() {
      return child.pid!
    },
    async restart(signal, downMs) {
      await end(child, signal)
      await new Promise((resolve) => setTimeout(resolve, downMs))
      child = await begin(words, portOf(more) ?? port)
    },
    full(is) {
      spawnSync('prlimit', ['--pid', String(child.pid), `--fsize=${is ? '1' : 'unlimited'}:unlimited`])
    },
    async stop() {
      await end(child, 'SIGKILL')
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

const portOf = (more: readonly string[]): number | null => {
  const at = more.indexOf('--tls-port')
  return at < 0 ? null : Number(more[at + 1])
}

async function begin(words: readonly string[], port: number): Promise<ChildProcess> {
  // a file that may not grow ends a program by a signal, unless that is ignored: a full disk does not
  const child = spawn('sh', ['-c', 'trap "" XFSZ; exec "$@"', 'sh', redisProgram(), ...words], { stdio: 'ignore' })
  let ended = false
  child.on('exit', () => {
    ended = true
  })
  for (let tries = 0; tries < 600; tries += 1) {
    if (ended) throw new Error(`redis-server ended at once: ${words.join(' ')}`)
    if (await listens(port)) return child
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
  throw new Error('redis-server does not listen after half a minute')
}

async function end(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return
  const ended = new Promise((resolve) => child.once('exit', resolve))
  child.kill(signal)
  await ended
}

const listens = (port: number): Promise<boolean> =>
  new Promise((resolve) => {
    const socket = createConnection(port, '127.0.0.1')
    socket.on('connect', () => {
      socket.destroy()
      resolve(true)
    })
    socket.on('error', () => resolve(false))
  })
