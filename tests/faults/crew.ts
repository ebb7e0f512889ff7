/** Processes of a test: workers and those who ask. Each is ended by its own id. */
import { type ChildProcess, spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { BIN } from '../cli/spawned.ts'
import { TOP } from '../tidy/sources.ts'

export interface Member {
  readonly child: ChildProcess
  readonly said: () => string
  readonly ended: Promise<{ code: number | null; signal: NodeJS.Signals | null }>
  kill(signal: NodeJS.Signals): void
}

/** a clock that jumps when the process is told to, by a signal */
const CLOCK = fileURLToPath(new URL('./jumpingClock.mjs', import.meta.url))

/**
 * Starts a process.
 *
 * @param words  behind `node`
 */
export function member(words: readonly string[], environment: Readonly<Record<string, string>> = {}): Member {
  const child = spawn(process.execPath, words, {
    cwd: TOP,
    env: { ...process.env, NO_COLOR: '1', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let said = ''
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (text: string) => {
      said += text
    })
  return {
    child,
    said: () => said,
    ended: new Promise((resolve) => child.on('close', (code, signal) => resolve({ code, signal }))),
    kill: (signal) => {
      child.kill(signal)
    },
  }
}

/** Resolves when it has said this, at whatever place its lines were broken. */
export async function says(one: Member, what: RegExp): Promise<void> {
  while (!what.test(one.said().replaceAll(/\s+/g, ' '))) await new Promise((resolve) => setTimeout(resolve, 50))
}

/** A worker with one thread, as it is typed. */
export const worker = (port: number, environment: Readonly<Record<string, string>> = {}, ...more: readonly string[]): Member =>
  member(['--import', CLOCK, BIN, 'work', '--queue', `redis://127.0.0.1:${port}`, '--workers', '1', ...more], environment)
