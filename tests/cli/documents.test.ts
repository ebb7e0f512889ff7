import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { afterAll, describe, expect, test } from 'vitest'
import { main } from '../../packages/cli/src/main.ts'
import { memoryShell } from '../helpers/memoryShell.ts'
import { OPEN_LINE } from '../helpers/scenarioTexts.ts'
import { DEMO, loopwright, runFiles, start } from './spawned.ts'
import { schemaCheck } from '../helpers/schemaCheck.ts'

const store = mkdtempSync(join(tmpdir(), 'loopwright-documents-'))
afterAll(() => rmSync(store, { recursive: true }))

async function validator(of: 'run' | 'sweep' | 'carriers' | 'drivers' | 'grid' | 'forecast') {
  const shell = memoryShell()
  expect(await main(['schema', '--of', of], shell)).toBe(0)
  return schemaCheck(JSON.parse(shell.said.out))
}

describe('each document is what its schema says', () => {
  test('a sweep, with a plan and with gridlock', async () => {
    const valid = await validator('sweep')
    const { out } = await loopwright('sweep', DEMO, '--carriers', '1,10,18', '--replications', '2', '--json')
    const sweep = JSON.parse(out)
    expect(valid(sweep), JSON.stringify(valid.errors)).toBe(true)
    expect(sweep.counts[2]).toMatchObject({ carriers: 18, gridlocks: 2 })
    const { shares } = sweep.counts[1].stations[0]
    expect(Object.values(shares as Record<string, number>).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 10)
    expect(valid({ ...sweep, surprise: 1 })).toBe(false)
    expect(valid({ ...sweep, partial: 'no' })).toBe(false)
  })

  test('a forecast, with a plan, weeks and overtime', async () => {
    const valid = await validator('forecast')
    const { out } = await loopwright('forecast', DEMO, '--replications', '12', '--json')
    const forecast = JSON.parse(out)
    expect(valid(forecast), JSON.stringify(valid.errors)).toBe(true)
    expect(forecast.shift.planVerdict).toMatchObject({ n: 12 })
    expect(forecast.overtime.mean.n).toBe(12)
  })

  test('a run with its events', async () => {
    const valid = await validator('run')
    const { out } = await loopwright('run', DEMO, '--json', '--trace')
    const run = JSON.parse(out)
    expect(valid(run), JSON.stringify(valid.errors?.slice(0, 5))).toBe(true)
    expect(run.trace.length).toBeGreaterThan(10_000)
    const { warmupSeconds, endSeconds } = run.window
    for (const station of run.stations) {
      const seconds = Object.values(station.seconds as Record<string, number>).reduce((sum, one) => sum + one, 0)
      expect(seconds).toBe(endSeconds - warmupSeconds)
    }
    expect(valid({ ...run, output: -1 })).toBe(false)
  })

  test.each([
    ['run', '--trace'],
    ['sweep', '--carriers', '3..4', '--replications', '2'],
    ['carriers', '--carriers', '3..4', '--at-most', '20'],
    ['drivers', '--replications', '2'],
    ['forecast', '--replications', '4'],
  ] as const)('a line that is no single loop has no law: %s', async (command, ...more) => {
    const valid = await validator(command)
    const shell = memoryShell({ 'line.yaml': OPEN_LINE })
    expect(await main([command, 'line.yaml', ...more, '--json'], shell)).toBe(0)
    const told = JSON.parse(shell.said.out)
    expect(valid(told), JSON.stringify(valid.errors?.slice(0, 5))).toBe(true)
    expect(told.law).toBeNull()
  })

  test('a grid that was stopped: every setting has the same whole replications', async () => {
    const valid = await validator('grid')
    const running = start([
      'grid',
      DEMO,
      '--carriers',
      '8,10',
      '--set',
      'drive.speed=10,15 m/min',
      '--replications',
      '100000',
      '--json',
      '--store',
      store,
    ])
    // of each of the four settings and of the line as it is some runs are in
    while (runFiles(store) < 5) await setTimeout(20)
    running.interrupt()
    const { out, code } = await running.ended
    const grid = JSON.parse(out)
    expect(code).toBe(130)
    expect(valid(grid), JSON.stringify(valid.errors?.slice(0, 5))).toBe(true)
    expect(grid).toMatchObject({ partial: true, replications: 100_000, base: null, outside: { carriers: 12 } })
    const counts = new Set(grid.points.map(({ units }: { units: number[] }) => units.length))
    expect(counts.size).toBe(1)
    expect(grid.outside.units).toHaveLength([...counts][0] as number)
    expect(valid({ ...grid, best: -1 })).toBe(false)
  })

  test('runs, many, and none because they were stopped', async () => {
    const valid = await validator('run')
    const many = JSON.parse((await loopwright('run', DEMO, '--json', '--replications', '3')).out)
    expect(valid(many), JSON.stringify(valid.errors?.slice(0, 5))).toBe(true)
    expect(many.intervals.outputPerHour.n).toBe(3)
    const stopped = JSON.parse(await stoppedRun())
    expect(stopped.partial).toBe(true)
    expect(valid(stopped), JSON.stringify(valid.errors?.slice(0, 5))).toBe(true)
  })
})

/** What is printed of runs that are stopped. One that has not begun says so and prints nothing: the next is given more time. */
async function stoppedRun(milliseconds = 200): Promise<string> {
  const running = start(['run', DEMO, '--json', '--replications', '100000'])
  await running.saidOnErr('replications, seed')
  await setTimeout(milliseconds)
  running.interrupt()
  const { code, out, err } = await running.ended
  expect(code).toBe(130)
  if (out !== '') return out
  expect(err).toContain('nothing was run')
  return await stoppedRun(milliseconds * 2)
}
