import { expect, test } from 'vitest'
import { blockLoop, generalLine } from '../../../../tests/bench/lines.ts'
import { GENERAL_LINES } from '../../../../tests/bench/generalLines.ts'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { createSimulator } from '../simulate.ts'
import type { LineSpec } from '../spec.ts'
import { LOAD, MOVE_START, PRODUCT_ARRIVAL, Trace, TURNED_AWAY } from './trace.ts'

const WORLD = { seed: 'totals', replication: 0 }
const window = (line: LineSpec, warmupSeconds: number, endSeconds: number): LineSpec => ({ ...line, window: { warmupSeconds, endSeconds } })

test.each([
  ['general', generalLine(2)],
  ['graph', window(GENERAL_LINES.graph!(), 600, 7200)],
  ['goods', window(GENERAL_LINES.goods!(), 600, 7200)],
  ['loop', window(blockLoop(1, 2), 1800, 7200)],
])('%s: what a trace of the whole run has events of', (_, line) => {
  const trace = new Trace()
  const traced = createSimulator(line, { trace })
  const plain = createSimulator(line, { engine: 'events' })
  const { output } = traced.run(WORLD)
  plain.run(WORLD)
  const count = (...kinds: number[]) => {
    let found = 0
    for (let k = 0; k < trace.length; k++) if (kinds.includes(trace.kinds[k]!)) found++
    return found
  }
  const totals = plain.totals()
  expect(totals).toEqual({
    moves: count(MOVE_START),
    loads: count(LOAD),
    output: totals.output,
    arrivals: count(PRODUCT_ARRIVAL, TURNED_AWAY),
  })
  expect(totals).toEqual(traced.totals())
  expect(totals.output).toBeGreaterThanOrEqual(output)
  expect(totals.moves).toBeGreaterThan(500)
})

test('the warm-up changes none of them, and neither does the engine', () => {
  const totals = [0, 1800, 3600].flatMap((warmup) =>
    (['events', 'recursion'] as const).map((engine) => {
      const simulator = createSimulator(window(blockLoop(1, 2), warmup, 7200), { engine })
      simulator.run(WORLD)
      return simulator.totals()
    }),
  )
  expect(new Set(totals.map((each) => JSON.stringify(each))).size).toBe(1)
  // all carriers but the last of a queue start at instant 0, which no window has
  const simulator = createSimulator(smallLoop({ zones: 4, start: [0, 2], move: 10, clear: 10, until: 5 }), { engine: 'events' })
  expect(simulator.totals()).toEqual({ moves: 0, loads: 0, output: 0, arrivals: 0 })
  const { zones } = simulator.run(WORLD)
  expect(zones.map(({ movesOut }) => movesOut)).toEqual([0, 0, 0, 0])
  expect(simulator.totals().moves).toBe(2)
})
