import { expect, test } from 'vitest'
import type { Cell } from '../cells/cell.ts'
import type { Effects } from '../runner/effects.ts'
import { studyContext } from './studyContext.ts'
import { RING, testLine } from '../../../../tests/helpers/scenarioTexts.ts'

const scenario = testLine()
const asked = { replications: undefined, seed: undefined, workers: 0, long: undefined }

function world(signal = new AbortController().signal) {
  const cells: Cell[] = []
  const progress: string[] = []
  const effects = { progress: (line: string) => progress.push(line), now: () => new Date('2030-02-03'), signal } as unknown as Effects
  const made = studyContext({ ...asked, scenario, scenarioFile: 'ring.yaml', scenarioText: RING, effects }, (cell) => cells.push(cell))
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
  const [first, second] = [result, again].map((each) => story(each, { scenarioFile: 'ring.yaml' }))
  expect([first!.answer.id, second!.answer.id]).toEqual(['compare-answer', 'compare-2-answer'])
  // what both stories have stands under every story of the scenario, word for word
  const shared = first!.cells.filter(({ id }) => second!.cells.some((cell) => cell.id === id))
  expect(second!.cells.filter(({ id }) => shared.some((cell) => cell.id === id))).toEqual(shared)
  expect(shared.every(({ id }) => /^(inputs|section|caution)-/.test(id))).toBe(true)
  expect(() => story({ ...result }, { scenarioFile: 'ring.yaml' })).toThrow('not made by this notebook')
})

test('a forecast adds up weeks of the shifts that it simulated', async () => {
  const { context, cells } = world()
  const { week, sweep } = await context.forecast({ replications: 5, shiftsPerWeek: 2 })
  const { units } = sweep.counts[0]!
  expect(week.units).toEqual([units[0]! + units[1]!, units[2]! + units[3]!])
  expect(cells.map(({ id }) => id)).toEqual(['forecast-simulated'])
})

test('a grid varies numbers of carriers and values of the file, and tells what is wrong with them', async () => {
  const { context, story, cells, progress } = world()
  const result = await context.grid({ carriers: [3, 4], set: { 'drive.speed': ['20 m/min', '30 m/min'] }, replications: 3, seed: 'g' })
  expect(cells.map(({ id }) => id)).toEqual(['grid-simulated'])
  expect(result.factors).toEqual([
    { name: 'carriers', levels: ['3', '4'] },
    { name: 'drive.speed', levels: ['20 m/min', '30 m/min'] },
  ])
  // the line as it stands: 4 carriers, 30 m/min
  expect(result).toMatchObject({ base: 3, outside: null })
  expect(result.points.map(({ carriers }) => carriers)).toEqual([3, 3, 4, 4])
  expect(story(result, { scenarioFile: 'ring.yaml' }).answer.id).toBe('grid-answer')
  expect(progress.some((line) => line.startsWith('4 settings: '))).toBe(true)
  await expect(context.grid({ set: { 'drive.sped': ['1 m/s'], 'carriers.length': ['9 m', '8 m'] } })).rejects.toThrow(
    /drive\.sped(.|\n)*carriers\.length/,
  )
})

test('a stop ends a study early, and it says so', async () => {
  const stop = new AbortController()
  stop.abort()
  const { context, cells } = world(stop.signal)
  const result = await context.compare({ a: scenario, b: scenario }, { replications: 50 })
  expect(result.partial).toBe(true)
  expect(cells[0]).toMatchObject({ provenance: { partial: true } })
})
