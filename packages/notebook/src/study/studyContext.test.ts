import { expect, test } from 'vitest'
import type { Cell } from '../cell.ts'
import type { Effects } from '../effects.ts'
import { studyContext } from './studyContext.ts'
import { testLine } from './testLine.test.ts'

const scenario = testLine()
const asked = { replications: undefined, seed: undefined, workers: 1 }

function world(signal = new AbortController().signal) {
  const cells: Cell[] = []
  const progress: string[] = []
  const effects = { progress: (line: string) => progress.push(line), now: () => new Date('2030-02-03'), signal } as unknown as Effects
  const made = studyContext({ ...asked, scenario, scenarioFile: 'ring.yaml', effects }, (cell) => cells.push(cell))
  return { ...made, cells, progress }
}

test('a study says what it does, leaves a cell of what was simulated, and has its story', async () => {
  const { context, story, cells, progress } = world()
  const lines = { today: scenario, proposal: context.moved({ S2: 'Z06' }) }
  const result = await context.compare(lines, { replications: 3, seed: 's' })
  const again = await context.compare(lines, { replications: 2 })
  expect(cells.map(({ id }) => id)).toEqual(['compare-simulated', 'compare-2-simulated'])
  expect(cells[0]).toMatchObject({ provenance: { seed: 's', replications: 3, partial: false, scenarioFile: 'ring.yaml' } })
  expect(progress.some((line) => line.startsWith('2 lines compared: '))).toBe(true)
  const ids = [result, again].map((each) => story(each, { scenarioFile: 'ring.yaml' }).answer.id)
  expect(ids).toEqual(['compare-answer', 'compare-2-answer'])
  expect(() => story({ ...result }, { scenarioFile: 'ring.yaml' })).toThrow('not made by this notebook')
})

test('a forecast adds up weeks of the shifts that it simulated', async () => {
  const { context, cells } = world()
  const { week, sweep } = await context.forecast({ replications: 5, shiftsPerWeek: 2 })
  const { units } = sweep.counts[0]!
  expect(week.units).toEqual([units[0]! + units[1]!, units[2]! + units[3]!])
  expect(cells.map(({ id }) => id)).toEqual(['forecast-simulated'])
})

test('a stop ends a study early, and it says so', async () => {
  const stop = new AbortController()
  stop.abort()
  const { context, cells } = world(stop.signal)
  const result = await context.compare({ a: scenario, b: scenario }, { replications: 50 })
  expect(result.partial).toBe(true)
  expect(cells[0]).toMatchObject({ provenance: { partial: true } })
})
