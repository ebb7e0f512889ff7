import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { scenarioOf, testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { shownView } from '../cells/cell.ts'
import { linePlan } from './linePlan.ts'

test('a loop is drawn as a plan, with no shade, its zones and stations counted', () => {
  const { finding, picture, table } = shownView(linePlan(testLine()).views)
  expect(finding).toBe('The loop as it is simulated: 10 zones, 3 stations.')
  expect(picture).toMatchObject({ kind: 'plan', paths: null, valueMeaning: null })
  expect(table.rows.map(({ cells }) => cells[1])).toEqual(['Load and unload', '', '', 'Fit', '', '', 'Test', '', '', ''])
})

test('an open line is drawn as a map', () => {
  const text = readFileSync(new URL('../../../../scenarios/test-and-repair-line.yaml', import.meta.url), 'utf8')
  const { finding, picture, howToRead } = shownView(linePlan(scenarioOf(text)).views)
  expect(finding).toContain('7 zones and ')
  expect(picture.kind === 'plan' && picture.paths!.some(({ takes }) => takes === 'rejected')).toBe(true)
  expect(howToRead).toContain('strong outlines are stations')
})
