import { scaledTimes, stream } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { inputDoubt } from './inputDoubt.ts'

const line = stationLoop()
/** All times of one station longer by a factor. */
const slower = (station: number, factor: number) => ({
  ...line,
  stations: line.stations.map((one, index) =>
    index === station && one.work !== null
      ? {
          ...one,
          work: one.work.map((task) => ({
            ...task,
            seconds: task.seconds.map((time) => (time === null ? null : scaledTimes(time, factor))),
          })),
        }
      : one,
  ),
})
const working = line.stations.findIndex(({ work }) => work !== null)

test('what moves the output is found, and adds to its spread; what does not, not', async () => {
  const uniform = stream('doubt', 0, 'factors')
  const draws = Array.from({ length: 16 }, () => {
    const level = 0.6 * (uniform() - 0.5)
    return { line: slower(working, Math.exp(level)), levels: [level, uniform() - 0.5] }
  })
  const result = await inputDoubt(line, { redrawn: draws }, { seed: '3', workers: 0 })
  expect([result.draws, result.without.length, result.within.length, result.partial]).toEqual([16, 32, 16, false])
  expect(result.split!.inputVariance).toBeGreaterThan(0)
  expect(result.variances[0]).toBeGreaterThan(10 * result.variances[1]!)
})

test('nothing redrawn adds nothing, and the worlds are those of the line', async () => {
  const same = [1, 2, 3].map(() => ({ line, levels: [0] }))
  const result = await inputDoubt(line, { redrawn: same }, { seed: '3', workers: 0 })
  expect(result.within.flat()).toEqual(result.without)
  expect([result.split!.inputVariance, result.variances]).toEqual([0, [0]])
})

test('too few are refused; a stop keeps whole draws', async () => {
  await expect(inputDoubt(line, { redrawn: [{ line, levels: [0] }] }, { seed: '1', workers: 0 })).rejects.toThrow('takes 3 draws or more')
  await expect(inputDoubt(line, { redrawn: [], replications: 1 }, { seed: '1', workers: 0 })).rejects.toThrow(
    'at least 2 replications, not 1',
  )
  const stopped = await inputDoubt(
    line,
    { redrawn: [1, 2, 3].map(() => ({ line, levels: [0] })) },
    { seed: '1', workers: 0, signal: AbortSignal.abort() },
  )
  expect([stopped.partial, stopped.split, stopped.variances]).toEqual([true, null, []])
})
