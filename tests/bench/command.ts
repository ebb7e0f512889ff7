/** The command in a process of its own, timed from outside. */
import { spawn, spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'

const BUILT = 'packages/cli/dist/cli.js'
const SOURCE = 'packages/cli/bin/loopwright.js'

/** "as it is built" where `npm run build` has made one, else "from source". */
export const wayToStart = (): string => (existsSync(BUILT) ? 'as it is built' : 'from source')
const command = (): string => (existsSync(BUILT) ? BUILT : SOURCE)

const since = (start: bigint): number => Number(process.hrtime.bigint() - start) / 1e9

/** From its start to its end. */
export function seconds(words: readonly string[]): number {
  const start = process.hrtime.bigint()
  const { status, stderr } = spawnSync(process.execPath, [command(), ...words], { encoding: 'utf8', maxBuffer: 2 ** 30 })
  if (status !== 0) throw new Error(`loopwright ${words.join(' ')} ended with ${status}: ${stderr}`)
  return since(start)
}

/**
 * From its start until it says something on standard error; it is stopped then.
 *
 * @param from  `source`: not as it is built
 */
export function secondsUntil(sentence: string, words: readonly string[], from: 'built' | 'source' = 'built'): Promise<number> {
  const start = process.hrtime.bigint()
  const running = spawn(process.execPath, [from === 'source' ? SOURCE : command(), ...words], { stdio: ['ignore', 'ignore', 'pipe'] })
  return new Promise((resolve, reject) => {
    let said = ''
    let took: number | null = null
    running.stderr.setEncoding('utf8').on('data', (text: string) => {
      said += text
      if (took !== null || !said.includes(sentence)) return
      took = since(start)
      running.kill('SIGINT')
    })
    running.on('error', reject).on('close', () => {
      if (took === null) reject(new Error(`loopwright ${words.join(' ')} never said "${sentence}", but ${said}`))
      else resolve(took)
    })
  })
}
