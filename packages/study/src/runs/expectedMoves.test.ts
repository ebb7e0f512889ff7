import { lawOrNull } from '@loopwright/line/bounds'
import { expect, test } from 'vitest'
import { expectedMoves } from './expectedMoves.ts'
import { replicate } from './replicate.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { withCarriers } from '../change/withCarriers.ts'

const constant = (value: number) => ({ kind: 'constant', value }) as const

test('carriers too few to meet: each goes round in a lone lap; enough: the slowest exchange sets the pace', () => {
  const spec = stationLoop()
  // lap: 8 moves of 2 s, work of 8 + 20 + 6 s, 3 releases of 1 s; exchange at the work: 2 + 20 + 1 + 1 s
  expect(expectedMoves(spec, lawOrNull(spec), 1)).toBeCloseTo((8 * 7200) / 53, 6)
  expect(expectedMoves(spec, lawOrNull(spec), 5)).toBeCloseTo((8 * 7200) / 24, 6)
})

test('no fewer than there are, as the runs themselves tell', async () => {
  const calm = stationLoop({ breakdowns: [], breaks: [], window: { warmupSeconds: 0, endSeconds: 72_000 } })
  for (const carriers of [1, 4]) {
    const [run] = await replicate(withCarriers(calm, carriers), { replications: 1 }, { seed: '1', workers: 0 })
    const moves = 8 * run!.output // one unit a lap
    expect(expectedMoves(calm, lawOrNull(calm), carriers) / moves).toBeGreaterThan(0.97)
    expect(expectedMoves(calm, lawOrNull(calm), carriers) / moves).toBeLessThan(1.1)
  }
})

test('nothing is known of a line that is no loop', () => {
  const spec = stationLoop()
  const open = { ...spec, paths: spec.paths.map((path, index) => (index === 0 ? { ...path, to: 2, moveSeconds: constant(2) } : path)) }
  expect(expectedMoves(open, lawOrNull(open), 3)).toBe(Number.POSITIVE_INFINITY)
})
