import { closeSync, existsSync, mkdtempSync, openSync, readFileSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { readCsv } from '@loopwright/scenario'
import { afterAll, describe, expect, test } from 'vitest'
import { DEMO, type Ended, loopwright, start } from './spawned.ts'

const folder = mkdtempSync(join(tmpdir(), 'loopwright-cli-'))
afterAll(() => rmSync(folder, { recursive: true }))
const inside = (name: string): string => join(folder, name)

const asked = new Map<string, Promise<Ended>>()
/** What a command says that writes no file: carried out once for all tests that look at it. */
function once(...words: string[]): Promise<Ended> {
  const key = words.join(' ')
  const ended = asked.get(key) ?? loopwright(...words)
  asked.set(key, ended)
  return ended
}

describe('results on standard output, all else on standard error', () => {
  test('check: code 0, 80 columns, nothing else said', async () => {
    const { code, out, err } = await once('check', DEMO)
    expect({ code, err }).toEqual({ code: 0, err: '' })
    for (const said of ['535.6 s', '75.4 s', '89.1 s', 'from 8 to 16 station-limited', '84.4 s of working time for each unit (the takt)'])
      expect(out.replaceAll('\n', ' ')).toContain(said)
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
    expect(out).not.toContain('\u001b')
  })

  test('sweep --json: the same bytes for 1, 2 and 5 workers', async () => {
    const words = ['sweep', DEMO, '--carriers', '9..11', '--replications', '3', '--seed', '8', '--json']
    const one = await loopwright(...words, '--workers', '1')
    expect(one.code).toBe(0)
    expect(JSON.parse(one.out).counts.map((count: { units: number[] }) => count.units.length)).toEqual([3, 3, 3])
    for (const workers of ['2', '5']) expect((await loopwright(...words, '--workers', workers)).out === one.out).toBe(true)
  })

  test('run --json --engine: the same bytes by either', async () => {
    const [events, recursion] = await Promise.all(
      ['events', 'recursion'].map((engine) => loopwright('run', DEMO, '--json', '--seed', '3', '--engine', engine)),
    )
    expect(events!.code).toBe(0)
    expect(JSON.parse(events!.out).output).toBeGreaterThan(0)
    expect(recursion!.out === events!.out).toBe(true)
  })

  test('run --json: one document and nothing else', async () => {
    const { code, out, err } = await once('run', DEMO, '--json')
    const run = JSON.parse(out)
    expect(code).toBe(0)
    expect(run.outputSeconds).toHaveLength(run.output)
    expect(err.split('\n')[0]).toBe('12 carriers, 1 replication, seed 1')
    expect(out + err).not.toContain('\u001b')
  })
})

describe('- in the place of a file', () => {
  const piped = (input: string, ...words: string[]) => start(words, undefined, input).ended
  const text = readFileSync(DEMO, 'utf8')
  const oneLine = (said: string): string => said.replace(/\s+/g, ' ')

  test('check and run tell of standard input what they tell of the file', async () => {
    for (const command of [['check'], ['run', '--json']]) {
      const [of, by] = await Promise.all([once(command[0]!, DEMO, ...command.slice(1)), piped(text, command[0]!, '-', ...command.slice(1))])
      expect(by.code).toBe(0)
      expect(oneLine(by.out)).toBe(oneLine(of.out.replaceAll(DEMO, '<stdin>')))
    }
  })

  test('a problem has its line and column in <stdin>', async () => {
    const { code, out, err } = await piped(text.replace('format: 1', 'format: 1\nzonez: 3'), 'sweep', '-')
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err).toMatch(/^<stdin>:\d+:1 {2}E_UNKNOWN_KEY {2}zonez$/m)
  })

  test('a table, and what is found in it', async () => {
    const { code, err } = await piped('when,what\n', 'times', '-')
    expect(code).toBe(2)
    expect(err).toContain('<stdin>')
  })

  test('a notebook is found by its place', async () => {
    const { code, err } = await piped('export default {}', 'notebook', '-')
    expect(code).toBe(2)
    expect(err).toContain('notebook takes a file')
  })
})

describe('what goes wrong', () => {
  test.each([
    [2, ['check', 'nowhere.yaml'], 'there is no file "nowhere.yaml"'],
    [2, ['run', 'package.json'], 'package.json:1:'],
    [1, ['sweep', DEMO, '--out', 'package.json/page.html'], 'a part of the path is a file'],
    [2, ['notebook', 'packages/cli/src/shell/shell.ts'], 'no notebook'],
    [2, ['run', 'scenarios/test-and-repair-line.yaml', '--engine', 'recursion'], 'the recursion does not hold for this line'],
    [2, ['run', DEMO, '--engine', 'recursion', '--trace', '--json'], 'only the event engine has'],
  ])('code %i: %j', async (expected, words, said) => {
    const { code, out, err } = await loopwright(...words)
    expect(code).toBe(expected)
    expect(out).toBe('')
    expect(err.replaceAll(/\s+/g, ' ')).toContain(said)
    expect(err).not.toMatch(/\n\s+at /)
  })

  // skipped because some systems have no file that is always full
  test.skipIf(!existsSync('/dev/full')).each([['run', '--json'], ['run'], ['trace', '--json']])(
    'a full disk ends with one sentence and code 1, and never with half a result: %s %s',
    async (...words) => {
      const { spawnSync } = await import('node:child_process')
      const bin = 'packages/cli/bin/loopwright.js'
      const full = openSync('/dev/full', 'w')
      const { status, stderr } = spawnSync(process.execPath, [bin, ...words, 'scenarios/ten-zone-learning-loop.yaml'], {
        encoding: 'utf8',
        stdio: ['ignore', full, 'pipe'],
      })
      closeSync(full)
      expect(status).toBe(1)
      expect(stderr.trimEnd().split('\n').at(-1)).toBe('the results could not be written to standard output: the disk is full')
      expect(stderr).not.toMatch(/\n\s+at /)
    },
  )

  test('a reader that leaves early is no failure', async () => {
    const { spawnSync } = await import('node:child_process')
    const piped = spawnSync('sh', ['-c', `"${process.execPath}" packages/cli/bin/loopwright.js schema --of sweep | head -1`], {
      encoding: 'utf8',
    })
    expect(piped.stdout).toBe('{\n')
    expect(piped.stderr).toBe('')
  })
})

/** `columns.csv` says what every column of every other file is, in their order, and nothing else. */
function everyColumnIsTold(folder: string): void {
  const rows = readCsv(readFileSync(join(folder, 'columns.csv'), 'utf8')).rows.map(({ cells }) => cells)
  const files = readdirSync(folder).filter((name) => name !== 'columns.csv')
  expect([...new Set(rows.map(([file]) => `${file}.csv`))].sort()).toEqual(files.sort())
  for (const name of files) {
    const told = rows.filter(([file]) => `${file}.csv` === name)
    expect(readCsv(readFileSync(join(folder, name), 'utf8')).columns, name).toEqual(told.map(([, column]) => column))
    for (const [, column, says] of told) expect(says!.length, `${name}: ${column}`).toBeGreaterThan(3)
  }
}

test('Ctrl-C, also when it comes twice: valid JSON marked partial, whole replications, no page, code 130', async () => {
  const page = inside('stopped.html')
  const running = start(['sweep', DEMO, '--carriers', '9..10', '--replications', '100000', '--json', '--out', page])
  await running.saidOnErr('so far, after 10 runs of each')
  running.interrupt()
  running.interrupt()
  const { code, out, err } = await running.ended
  const { partial, counts } = JSON.parse(out)
  expect({ code, partial }).toEqual({ code: 130, partial: true })
  expect(counts.map((count: { carriers: number }) => count.carriers)).toEqual([9, 10])
  for (const count of counts) expect(count.units).toHaveLength(count.replications)
  expect(err).toMatch(/stopped: .* of 200\u202f0[03]0 replications in .*\nstopped before the end: no page was written\n$/)
  expect(existsSync(page)).toBe(false)
})

describe('files', () => {
  test('a run: tables whose columns README.md tells, and a page', async () => {
    const page = inside('run.html')
    const tables = inside('tables')
    const { code, out } = await loopwright('run', DEMO, '--csv', tables, '--trace', '--out', page)
    expect(code).toBe(0)
    expect(out.trimEnd().split('\n').at(-1)).toBe(`Page: ${page}`)
    expect(readFileSync(page, 'utf8')).toMatch(/^<!doctype html>/i)
    everyColumnIsTold(tables)
    const told = readFileSync('packages/cli/README.md', 'utf8')
    for (const name of ['outputs', 'hours', 'station_seconds', 'zone_seconds', 'carrier_seconds', 'stop_seconds', 'events', 'columns']) {
      expect(readdirSync(tables)).toContain(`${name}.csv`)
      expect(told).toContain(`\`${name}.csv\``)
    }
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([])
  })

  test('a sweep: its tables', async () => {
    const tables = inside('sweep')
    await loopwright('sweep', DEMO, '--carriers', '10', '--replications', '2', '--csv', tables, '--json')
    const told = ['columns', 'counts', 'hours', 'plan', 'spread', 'stations', 'stops', 'units', 'zones'].map((name) => `${name}.csv`)
    expect(
      readdirSync(tables)
        .filter((name) => !name.startsWith('inputs-'))
        .sort(),
    ).toEqual(told)
    everyColumnIsTold(tables)
    const readme = readFileSync('packages/cli/README.md', 'utf8')
    for (const name of told) expect(readme).toContain(`\`${name}\``)
  })
})
