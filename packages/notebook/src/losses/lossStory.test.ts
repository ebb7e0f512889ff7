import { hereRunner, type LossResult, lossWaterfall } from '@loopwright/study'
import { beforeAll, expect, test } from 'vitest'
import { shownView } from '../cell.ts'
import { stopGroups } from '../study/groups.ts'
import { testLine } from '../study/testLine.test.ts'
import { lossSentences, lossStory } from './lossStory.ts'

const scenario = testLine()
let result: LossResult
beforeAll(async () => {
  const request = { seed: '1', replications: 3, stopGroups: stopGroups(scenario.line), bestCarriers: 4 }
  result = await lossWaterfall(scenario.line, request, hereRunner())
})

test('from the ideal to the forecast: the losses of the table add up', () => {
  const { rows } = shownView(lossStory(scenario, result).table.views)
  const number = (cell: string): number => Number(cell.split(' ± ')[0]!.replace('−', '-'))
  const [ideal, ...rest] = rows.map(({ cells }) => number(cells[1]!))
  const forecast = rest.pop()!
  const lost = rest.reduce((sum, each) => sum + each, 0)
  // each cell is rounded, to units where its interval is wide
  expect(Math.abs(ideal! + lost - forecast)).toBeLessThan(0.6 * (rest.length + 2))
  expect(result.causes.map(({ name }) => name)).toEqual(expect.arrayContaining(['jam', 'tool', 'breaks', 'exchange at S3']))
  expect(rows.map(({ cells }) => cells[0]).slice(1, -1)).toEqual(result.causes.map(({ name }) => name).reverse())
})

test('the answer names the gap and its largest causes', () => {
  const [gap, causes] = lossStory(scenario, result).answer.sentences
  expect(gap).toContain(`as it stands it makes ${result.forecast!.mean.toFixed(0)} in the same worlds.`)
  const worst = [...result.causes].sort((a, b) => b.step.mean - a.step.mean)[0]!
  expect(causes).toMatch(new RegExp(`^Most are lost by ${worst.name} \\(`))
})

test('the chart says the numbers of the table; without an answer there is none', () => {
  const { chart, table } = lossStory(scenario, result)
  const { rows } = shownView(table.views)
  const drawn = shownView(chart!.views).table!.rows
  expect(drawn.slice(1, -1).map(({ cells }) => cells.slice(0, 2))).toEqual(rows.slice(1, -1).map(({ cells }) => cells.slice(0, 2)))
  expect([drawn[0]!.cells[1], drawn.at(-1)!.cells[1]]).toEqual([rows[0]!.cells[1], rows.at(-1)!.cells[1]])
  expect(lossStory(scenario, { ...result, forecast: null, ideal: null, gap: null, causes: [] }).chart).toBeNull()
})

test('nothing lost, or nothing known yet', () => {
  expect(lossSentences({ ...result, causes: [] }, 'a shift')).toHaveLength(1)
  expect(lossSentences({ ...result, forecast: null }, 'a shift')[0]).toMatch(/^No answer yet/)
})
