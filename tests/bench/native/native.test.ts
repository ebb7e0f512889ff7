import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createSimulator, type LineSpec, type RunResult } from '@loopwright/line'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { blockLoop, generalLine } from '../lines.ts'
import { compileNative, findCompiler, type NativeEngine, nativeText, runNative } from './native.ts'

const SEED = 'native'
const ENGINES: readonly NativeEngine[] = ['events', 'recursion']
const block = blockLoop(1, 8)
const many = blockLoop(2, 8)

const turned: LineSpec = {
  ...block,
  stations: block.stations.map((station, s) => ({ ...station, zone: (block.stations[s]!.zone + 11) % 20 })),
}

const LINES: Readonly<Record<string, LineSpec>> = {
  'the block that is timed': block,
  'its statistics from half an hour on': { ...block, window: { warmupSeconds: 1800, endSeconds: 8 * 3600 } },
  'one carrier': { ...block, carriers: { ...block.carriers, count: 1 } },
  'one zone free': { ...block, carriers: { ...block.carriers, count: 19 } },
  'stations turned by eleven zones': turned,
  'two blocks, the last hour': { ...many, window: { warmupSeconds: 7 * 3600, endSeconds: 8 * 3600 } },
  'looks at the instants at which zones turn clear': { ...block, carriers: { ...block.carriers, lengthMetres: 1.04 }, reactionSeconds: 0 },
  'no ramps': { ...block, paths: block.paths.map((path) => ({ ...path, accelerationMetresPerSecondSquared: null })) },
  'zones of all lengths, some shorter than the ramps': {
    ...block,
    paths: block.paths.map((path, p) => ({
      ...path,
      distanceMetres: 0.02 + 0.083 * ((7 * p) % 20),
      accelerationMetresPerSecondSquared: 0.03 + 0.01 * (p % 3),
    })),
  },
  'very uneven work': {
    ...block,
    stations: block.stations.map((station) => {
      const uneven = (tasks: typeof station.load) =>
        tasks?.map((task) => ({ ...task, seconds: [{ kind: 'lognormal', mean: 20, cv: 2 } as const] })) ?? null
      return { ...station, load: uneven(station.load), work: uneven(station.work), unload: uneven(station.unload) }
    }),
  },
}

/** What the program tells of a run, from the result of the product: all but what such a line never has. */
function told(result: RunResult): object {
  const { loads, outputPerHour, outputByHour, outputSeconds, lap, timeInLine, productsInLineMean, events } = result
  return {
    loads,
    outputPerHour,
    outputByHour,
    outputSeconds,
    lap,
    timeInLine,
    productsInLineMean,
    stations: result.stations.map(({ seconds: { working, blocked, exchanging, starved }, longestBlockSeconds, cycles }) => ({
      working,
      blocked,
      exchanging,
      starved,
      longestBlockSeconds,
      cycles,
    })),
    zones: result.zones.map(({ seconds: { free, claimed, working, blocked, vacating }, occupancyMean, movesOut }) => ({
      free,
      claimed,
      working,
      blocked,
      vacating,
      occupancyMean,
      movesOut,
    })),
    carriers: result.carriers.map(({ seconds, laps }) => ({ ...seconds, laps })),
    events,
  }
}

const compiler = findCompiler()
// skipped because it needs a C++ compiler, which not every machine has
describe.skipIf(compiler === null)('the model written anew in C++', () => {
  const folder = mkdtempSync(join(tmpdir(), 'loopwright-native-'))
  let program = ''
  beforeAll(() => {
    program = compileNative(compiler!.command, folder, 'conveyor', ['-O1'])
  })
  afterAll(() => rmSync(folder, { recursive: true }))

  test.each(Object.keys(LINES))('%s: the same numbers, whichever engine runs it', { tags: 'long' }, (name) => {
    const line = LINES[name]!
    const count = 3
    const ours = ENGINES.map((engine) => {
      const simulator = createSimulator(line, { engine })
      return Array.from({ length: count }, (_, replication) => told(simulator.run({ seed: SEED, replication })))
    })
    for (const engine of ENGINES) {
      const runs = runNative(program, line, [engine, 'tell', SEED, String(count)])
        .trim()
        .split('\n')
      const theirs = runs.map((text) => JSON.parse(text) as object)
      for (const mine of ours) expect(theirs).toEqual(mine)
    }
  })
})

test('a line that the program does not know is refused', () => {
  expect(nativeText(block)).toMatch(
    /^carriers 11\nwindow 0 28800\nreaction 0\.1\n(path 0\.2 0\.5 1\.04 0\.75 .*\n){20}(station .*\n){6}end\n$/,
  )
  const two = {
    ...block,
    stations: block.stations.map((station) => ({ ...station, work: station.work ?? station.load ?? station.unload })),
  }
  expect(() => nativeText(two)).toThrow('the program knows stations of one duty')
  expect(() => nativeText(generalLine(8))).toThrow('the program knows a plain loop of derived times only: it is not one closed loop')
  const named: LineSpec = { ...block, carriers: { ...block.carriers, start: 'packed' } }
  expect(() => nativeText(named)).toThrow('the program knows a plain loop')
})
