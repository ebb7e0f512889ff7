import { type DriverResult, driverStudy, hereRunner } from '@loopwright/study'
import { beforeAll, expect, test } from 'vitest'
import { shownView } from '../cell.ts'
import { testLine } from '../study/testLine.test.ts'
import { driverStory, limitSentences } from './driverStory.ts'

const scenario = testLine((text) => text.replace(/stops:[\s\S]*/, ''))
const shift = { one: 'shift', each: 'a shift', many: 'shifts', plan: null }
let result: DriverResult
beforeAll(async () => {
  result = await driverStudy(scenario.line, { seed: '1', replications: 3 }, hereRunner())
})

test('the slowest station limits the line, in the answer, the table and the waiting', () => {
  const { answer, table, waiting } = driverStory(scenario, result)
  const best = result.drivers[0]!
  expect(answer.sentences[0]).toBe(
    `What limits the line most is S3 Test: 5\u202f% less of it brings ${best.unitsOfStep.toFixed(1)} units a shift.`,
  )
  expect(answer.sentences[1]).toContain('those before S3 Test are blocked')
  const { rows } = shownView(table.views)
  expect(rows.length).toBe(result.drivers.length)
  expect(rows[0]).toMatchObject({ marked: true, cells: ['S3 Test', 'less', best.unitsOfStep.toFixed(1), expect.any(String)] })
  expect(shownView(waiting.views).rows.find(({ marked }) => marked)?.cells[0]).toBe('S3 Test')
})

test('several that cannot be told apart are named together; none is said too', () => {
  expect(limitSentences({ ...result, limits: [0, 1] }, shift)[0]).toContain(`among S3 Test and ${result.drivers[1]!.name}. Of S3 Test,`)
  expect(limitSentences({ ...result, limits: [] }, shift)).toEqual(['No time of the line is shown to limit its output.'])
  expect(limitSentences({ ...result, drivers: [], limits: [] }, shift)[0]).toMatch(/^No answer yet/)
})

test('where the waiting points elsewhere, the gain is trusted', () => {
  const elsewhere = { ...result, explanation: { ...result.explanation!, candidate: 0 } }
  expect(driverStory(scenario, elsewhere).answer.sentences[1]).toContain(
    'points at S1 Load and unload. Where the two disagree, trust the gain',
  )
})
