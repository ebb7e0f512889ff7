import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { DEMO, loopwright, start } from './spawned.ts'

const folder = mkdtempSync(join(tmpdir(), 'loopwright-cli-'))
afterAll(() => rmSync(folder, { recursive: true }))
const inside = (name: string): string => join(folder, name)

describe('results on standard output, all else on standard error', () => {
  test('check: code 0, 80 columns, nothing else said', async () => {
    const { code, out, err } = await loopwright('check', DEMO)
    expect({ code, err }).toEqual({ code: 0, err: '' })
    for (const said of ['535.6 s', '75.4 s', '89.1 s', 'from 8 to 16 station-limited', 'Takt 84.4 s'])
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
  }, 180_000)

  test('run --json --engine: the same bytes by either', async () => {
    const [events, recursion] = await Promise.all(
      ['events', 'recursion'].map((engine) => loopwright('run', DEMO, '--json', '--seed', '3', '--engine', engine)),
    )
    expect(events!.code).toBe(0)
    expect(JSON.parse(events!.out).output).toBeGreaterThan(0)
    expect(recursion!.out === events!.out).toBe(true)
  })

  test('run --json: one document and nothing else', async () => {
    const { code, out, err } = await loopwright('run', DEMO, '--json')
    const run = JSON.parse(out)
    expect(code).toBe(0)
    expect(run.outputSeconds).toHaveLength(run.output)
    expect(err.split('\n')[0]).toBe('12 carriers, 1 replication, seed 1')
    expect(out + err).not.toContain('\u001b')
  })
})

describe('what goes wrong', () => {
  test.each([
    [2, ['check', 'nowhere.yaml'], 'there is no file "nowhere.yaml"'],
    [2, ['run', 'package.json'], 'package.json:1:'],
    [1, ['sweep', DEMO, '--out', 'package.json/page.html'], 'a part of the path is a file'],
    [2, ['notebook', 'packages/cli/src/shell.ts'], 'no notebook'],
    [2, ['run', 'scenarios/test-and-repair-line.yaml', '--engine', 'recursion'], 'the recursion does not hold for this line'],
    [2, ['run', DEMO, '--engine', 'recursion', '--trace', '--json'], 'only the event engine has'],
  ])('code %i: %j', async (expected, words, said) => {
    const { code, out, err } = await loopwright(...words)
    expect(code).toBe(expected)
    expect(out).toBe('')
    expect(err.replaceAll(/\s+/g, ' ')).toContain(said)
    expect(err).not.toMatch(/\n\s+at /)
  })

  test('a reader that leaves early is no failure', async () => {
    const { spawnSync } = await import('node:child_process')
    const piped = spawnSync('sh', ['-c', `"${process.execPath}" packages/cli/bin/loopwright.js schema --of sweep | head -1`], {
      encoding: 'utf8',
    })
    expect(piped.stdout).toBe('{\n')
    expect(piped.stderr).toBe('')
  })
})

test('Ctrl-C, also when it comes twice: valid JSON marked partial, whole replications, no page, code 130', async () => {
  const page = inside('stopped.html')
  const running = start(['sweep', DEMO, '--carriers', '9..10', '--replications', '100000', '--json', '--out', page])
  await running.saidOnErr('replications each')
  await new Promise((resolve) => setTimeout(resolve, 3000))
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
    const told = readFileSync('packages/cli/README.md', 'utf8')
    for (const name of readdirSync(tables)) {
      expect(told).toContain(`\`${name}\``)
      const columns = readFileSync(join(tables, name), 'utf8').split('\r\n')[0]!.split(',')
      for (const column of columns) expect(told, `${name}: ${column}`).toContain(`\`${column}\``)
    }
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([])
  })

  test('a sweep: its tables', async () => {
    const tables = inside('sweep')
    await loopwright('sweep', DEMO, '--carriers', '10', '--replications', '2', '--csv', tables, '--json')
    expect(readdirSync(tables).sort()).toEqual(['counts.csv', 'hours.csv', 'stations.csv', 'stops.csv', 'units.csv', 'zones.csv'])
    const told = readFileSync('packages/cli/README.md', 'utf8')
    for (const name of readdirSync(tables)) {
      for (const column of readFileSync(join(tables, name), 'utf8').split('\r\n')[0]!.split(',')) expect(told).toContain(`\`${column}\``)
    }
  })
})
