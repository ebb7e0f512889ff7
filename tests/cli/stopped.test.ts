/**
 * Ctrl-C, given to the command as typed, on lines that take long: at whatever it is, it ends by 130, and not because it was done. How long that takes is
 * counted in what it did not do any more: a reading that is broken off tells nothing, a study that is stopped has not run all that was asked for.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { type Ended, start } from './spawned.ts'

const folder = mkdtempSync(join(tmpdir(), 'loopwright-stopped-'))
afterAll(() => rmSync(folder, { recursive: true }))

function lineOf(name: string, zones: number, carriers: number, length = '20 h'): string {
  const file = join(folder, `${name}.yaml`)
  const place = (part: number): string => `Z${String(Math.round(zones * part)).padStart(String(zones).length, '0')}`
  const text = [
    `format: 1\nname: ${zones} zones\nquestion: How much?\nwarmup: 1 min\nlength: ${length}`,
    'drive: { speed: 15 m/min, reaction: 0.2 s }',
    `carriers: { count: ${carriers}, length: 0.8 m }`,
    `loop: ${zones} zones of 1 m`,
    'stations:',
    `  A: { zone: ${place(0.1)}, unload: { takeOff: 5 s }, load: { place: 6 s } }`,
    `  B: { zone: ${place(0.4)}, work: { fit: exponential 4 s } }`,
    `  C: { zone: ${place(0.7)}, work: { test: exponential 4 s } }`,
    'stops: { jam: { at: A, after: exponential 40 min, lasts: exponential 60 s } }',
  ]
  writeFileSync(file, `${text.join('\n')}\n`)
  return file
}

// one replication is as many events as of 2,000 zones in 20 h, and is read in a tenth of the time
const LONG = lineOf('long', 200, 80, '200 h')
const MIDDLE = lineOf('middle', 200, 80)
const PLACES = lineOf('places', 2000, 800)
// what is done once only is stopped in something longer
const WIDE = lineOf('wide', 5000, 2000)
const FAR = lineOf('far', 5000, 2000, '200 h')
const NOTEBOOK = join(folder, 'long.ts')
writeFileSync(
  NOTEBOOK,
  `import { notebook } from '@loopwright/notebook'
export default notebook({ title: 'Long', scenario: 'long.yaml' }, async ({ sweep }) => void (await sweep({ carriers: [80, 81], replications: 50 })))\n`,
)

const stopped = ({ code, out, err }: Ended): void => {
  expect(err + out).not.toMatch(/defect|\n\s+at /)
  expect(code).toBe(130)
}

describe('in the middle of the runs', () => {
  test.each([
    ['run', LONG, '--replications', '1000', '--workers', '2', '--yes'],
    ['run', LONG, '--replications', '1000', '--json', '--yes'],
    ['sweep', LONG, '--carriers', '80..83', '--replications', '1000', '--workers', '2', '--yes'],
    ['carriers', LONG, '--yes'],
    ['losses', LONG, '--replications', '1000', '--yes'],
    ['drivers', LONG, '--replications', '1000', '--yes'],
    ['forecast', LONG, '--replications', '1000', '--yes'],
    ['compare', LONG, '--set', 'fast: drive.speed=20 m/min', '--replications', '1000', '--yes'],
    ['grid', LONG, '--carriers', '80..81', '--replications', '1000', '--yes'],
    ['steady', WIDE],
    // kept from where the run never comes to: kept whole, there soon are more events than can be kept
    ['trace', FAR, '--from', '199.9 h'],
    ['notebook', NOTEBOOK],
    ['order', MIDDLE, '--move', 'B,C'],
    ['order', PLACES, '--move', 'B'],
  ])('%s %s %s %s', async (...words) => {
    // one that comes in the instant in which Node changes what hears of it is lost (inOneGo.ts), but hardly twice
    expect((await heard(words)) || (await heard(words))).toBe(true)
  })
})

/** milliseconds after which a Ctrl-C was lost; it is given again, and the command ends */
const LOST_MS = 30_000

/** Whether it ends by its first Ctrl-C. */
async function heard(words: readonly string[]): Promise<boolean> {
  const running = start(words, folder)
  await running.saidOnErr('\n')
  setTimeout(running.interrupt, 300)
  let given = 1
  const again = setInterval(() => {
    given += 1
    running.interrupt()
  }, LOST_MS)
  const ended = await running.ended
  clearInterval(again)
  stopped(ended)
  expect(ended.err).not.toMatch(/^done:/m)
  return given === 1
}

describe('while the file is read', () => {
  test.each([['check'], ['resolve'], ['balance', '--stations', '2']])('%s', async (name, ...more) => {
    const words = [name, WIDE, ...more]
    let whole: string | null = null
    // from when on it listens is not told: before, the signal ends it, and it has not said a word either
    for (const after of [1200, 700, 400]) {
      const running = start(words, folder)
      setTimeout(running.interrupt, after)
      const { code, out, err } = await running.ended
      expect(err + out).not.toMatch(/defect|\n\s+at /)
      // a Ctrl-C between the last word and the end finds all told
      if (code !== 0) expect(code).toBe(130)
      if (code === 130 && out === '') return
      whole ??= (await start(words, folder).ended).out
      expect(out === whole).toBe(true)
    }
  })
})

test('a second Ctrl-C ends it on the spot', async () => {
  const running = start(['run', WIDE, '--engine', 'events', '--yes'], folder)
  await running.saidOnErr('\n')
  setTimeout(running.interrupt, 300)
  // soon after the first it would be taken for its echo
  const again = setInterval(running.interrupt, 1400)
  const ended = await running.ended
  clearInterval(again)
  stopped(ended)
})
