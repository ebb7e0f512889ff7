/** What is true of every run of the reading aloud; the identities of MODEL.md §11 are asked of the lines of `agreement.test.ts`. */
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { expectIdentities } from './expectIdentities.ts'
import { randomLine } from './randomLine.ts'
import { readAloud } from './readAloud.ts'

test('the same line twice gives the same log; another replication gives another world', () => {
  const [spec] = fc.sample(
    randomLine().filter((line) => line.breakdowns.some((source) => source.timeToFailureSeconds.kind === 'exponential')),
    { seed: 2, numRuns: 1 },
  )
  const log = (replication: number): string => JSON.stringify(readAloud(spec!, 'twice', replication).log)
  expect(log(0)).toBe(log(0))
  expect(log(1)).not.toBe(log(0))
})

test('a run that counts an output too many, a second too few or a load twice keeps the identities no more', () => {
  const spec = fc.sample(randomLine(), { seed: 3, numRuns: 40 }).find((line) => readAloud(line, 'spoilt', 0).result.output > 3)!
  const { result, log } = readAloud(spec, 'spoilt', 0)
  expectIdentities(spec, { result, log })
  const [station, ...stations] = result.stations
  const less = { ...station!, seconds: { ...station!.seconds, working: station!.seconds.working - 1 } }
  const load = log.find(({ what }) => what === 'load')!
  const twice = Array.from({ length: spec.carriers.count + result.output + 1 }, () => load)
  for (const spoilt of [
    { result: { ...result, output: result.output + 1 }, log },
    { result: { ...result, stations: [less, ...stations] }, log },
    { result, log: [...log, ...twice] },
  ])
    expect(() => expectIdentities(spec, spoilt)).toThrow()
})
