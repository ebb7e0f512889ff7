import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

const read = (text: string, ...changes: [string, string][]) => readScenario(scenarioText(['', text], ...changes))

test('inspecting tasks with their share, rework again or only', () => {
  const { line } = read('inspections: { fit: 3 % }\nrework: { fit: again }', ['Z08,', 'Z08, accepts: all,']).scenario!
  const fit = line.tasks.indexOf('fit')
  expect(line.inspections).toEqual([{ task: fit, rejectProbability: 0.03 }])
  expect(line.rework).toEqual([{ task: fit, only: false }])
  expect(line.stations[2]!.accepts).toBe('all')
  expect(read('rework: { fit: only }').scenario!.line.rework[0]!.only).toBe(true)
})

test('unload tasks do not inspect, load and unload tasks are no rework, and names must be known', () => {
  const codes = (text: string) => read(text).problems.map(({ code }) => code)
  expect(codes('inspections: { take: 3 % }')).toEqual(['E_INSPECTION'])
  expect(codes('rework: { place: again }')).toEqual(['E_REWORK'])
  expect(codes('inspections: { fti: 3 % }')).toEqual(['E_UNKNOWN_TASK'])
  expect(codes('inspections: { fit: 130 % }')).toEqual(['E_SHARE_BEYOND'])
})
