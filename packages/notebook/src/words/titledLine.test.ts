import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { titledLine } from './titledLine.ts'

test('stops and tasks go by their titles; all else stays', () => {
  const scenario = testLine((text) =>
    text
      .replace('tool: { at: S3', 'tool: { title: Worn tool, at: S3')
      .replace('work: { fit: 15 s ± 20 % }', 'work: { fit: { title: Fitting, time: 15 s ± 20 % } }'),
  )
  const titled = titledLine(scenario)
  expect(titled.breakdowns.map(({ name }) => name)).toContain('Worn tool')
  expect(titled.tasks).toContain('Fitting')
  expect({ ...titled, breakdowns: [], tasks: [], variants: [] }).toEqual({ ...scenario.line, breakdowns: [], tasks: [], variants: [] })
})
