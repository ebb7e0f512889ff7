import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { expect, test } from 'vitest'
import { TOP } from '../../../../tests/tidy/sources.ts'
import { breakable } from './inOneGo.ts'

const inOneGo = breakable(() => false)

test('gives what the work gives, and throws what it throws', async () => {
  expect(await inOneGo('counting', () => 42)).toBe(42)
  const thrown = inOneGo('counting', () => {
    throw new RangeError('too many')
  })
  await expect(thrown).rejects.toThrow(new RangeError('too many'))
})

/** A process that works on and on, and what it says after so many interrupts, each given when it has said `begun`. */
async function interrupted(echoes: number): Promise<string> {
  const code = `
    import { breakable } from './packages/cli/src/shell/inOneGo.ts'
    import { writeSync } from 'node:fs'
    process.on('SIGINT', () => writeSync(1, 'heard '))
    let echoes = ${echoes}
    const inOneGo = breakable(() => echoes-- > 0)
    try {
      await inOneGo('counting', () => { writeSync(1, 'begun '); for (;;); })
    } catch (error) { writeSync(1, error.name + ': ' + error.message) }`
  const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', code], {
    cwd: TOP,
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let said = ''
  let begun = 0
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    said += text
    for (const times = said.split('begun').length - 1; begun < times; begun += 1) child.kill('SIGINT')
  })
  await once(child, 'close')
  return said
}

test('Ctrl-C ends it in the middle; an echo begins it anew', { tags: 'long' }, async () => {
  expect(await interrupted(0)).toBe('begun Stopped: stopped while counting')
  expect(await interrupted(1)).toBe('begun begun Stopped: stopped while counting')
})
