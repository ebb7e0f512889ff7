/** Types and lint, beside the other tests: each command of `npm run check`, with all that it says where it fails. */
import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { TOP } from './tidy/sources.ts'

const { scripts } = JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8')) as { scripts: Record<string, string> }

/** As a script of package.json is run. */
function ended(command: string): Promise<{ code: number | null; said: string }> {
  const PATH = [join(TOP, 'node_modules/.bin'), process.env.PATH].join(delimiter)
  const child = spawn(command, { shell: true, cwd: TOP, env: { ...process.env, PATH }, stdio: ['ignore', 'pipe', 'pipe'] })
  let said = ''
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (text: string) => {
      said += text
    })
  return new Promise((resolve, reject) => child.on('error', reject).on('close', (code) => resolve({ code, said })))
}

describe('npm run check', { tags: 'long' }, () => {
  test.each(scripts.check!.split(' && '))('%s', async (command) => {
    // Several threads of the compiler look at the same types each for itself, half as much again, and the other tests take the other cores.
    const { code, said } = await ended(command.startsWith('tsc ') ? `${command} --singleThreaded` : command)
    expect(code, said).toBe(0)
  })
})
