import { loopLine } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { replicate } from '../runs/replicate.ts'
import { longerWork, runTrials } from './runTrials.ts'

const options = { seed: '1', workers: 0 }

test('counts at each look are the outputs up to then, and the slower line makes fewer', async () => {
  const line = stationLoop()
  const { looks, healthy, slower } = await runTrials(line, { seconds: 3600, lookSeconds: 1500, longer: 0.2, replications: 3 }, options)
  expect(looks).toEqual([1500, 3000, 3600])
  const runs = await replicate(line, { replications: 3 }, options)
  const { warmupSeconds } = line.window
  runs.forEach(({ outputSeconds }, index) => {
    expect(healthy[index]).toEqual(looks.map((look) => outputSeconds.filter((instant) => instant <= warmupSeconds + look).length))
  })
  const sum = (paths: readonly (readonly number[])[]): number => paths.reduce((all, path) => all + path.at(-1)!, 0)
  expect(sum(slower)).toBeLessThan(sum(healthy))
})

test('longer work is longer by its factor: constant times by hand', () => {
  const { spec } = loopLine({
    zones: 4,
    zoneLength: 1,
    drive: { speed: 0.25 },
    carriers: { count: 1, length: 0.8 },
    stations: { L: { zone: 'Z01', load: 10 }, U: { zone: 'Z03', unload: 20 } },
    end: 3600,
  })
  const seconds = (line: typeof spec) => line.stations.map(({ load, unload }) => (load ?? unload)![0]!.seconds[0])
  expect(seconds(longerWork(spec, 1.5))).toEqual([
    { kind: 'constant', value: 15 },
    { kind: 'constant', value: 30 },
  ])
  expect(seconds(longerWork(spec, new Map([['U', 1.5]])))).toEqual([
    { kind: 'constant', value: 10 },
    { kind: 'constant', value: 30 },
  ])
})

describe('what does not fit is refused', () => {
  const line = stationLoop()
  const window = line.window.endSeconds - line.window.warmupSeconds
  test.each([
    [{ seconds: window + 1, lookSeconds: 60 }, 'does not fit into the judged stretch'],
    [{ seconds: 600, lookSeconds: 700 }, 'does not fit into a trial of 10 min'],
  ])('%j', async (over, says) => {
    await expect(runTrials(line, { longer: 0.1, replications: 2, ...over }, options)).rejects.toThrow(says)
  })
})

test('a factor of work is above 0', () => {
  for (const factor of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => longerWork(stationLoop(), factor)).toThrow('a factor above 0')
  expect(() => longerWork(stationLoop(), new Map([['A', -1]]))).toThrow('a factor above 0, not -1')
})
