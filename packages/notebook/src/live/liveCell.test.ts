import { expect, test } from 'vitest'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { liveCell } from './liveCell.ts'

test('the scenario travels along with the data files that it reads, and no other', () => {
  const text = SMALL_LINE.replace(/fit: 70 s[^}]*/, 'fit: { file: fit.csv, column: seconds } ')
  const readBeside = (path: string): string | null => (path === 'fit.csv' ? 'seconds\n70\n71\n72\n69\n' : null)
  const cell = liveCell({ scenarioFile: 'a.yaml', scenarioText: text, readBeside, variation: 'more' })
  if (cell !== null) expect(cell.source).toEqual({ file: 'a.yaml', text, beside: { 'fit.csv': readBeside('fit.csv') }, variation: 'more' })
  expect(liveCell({ scenarioFile: 'a.yaml', scenarioText: SMALL_LINE, readBeside })!.source.beside).toEqual({})
})

test('without a text, with one that is wrong, or with one too long there is none', () => {
  expect(liveCell({ scenarioFile: 'a.yaml' })).toBeNull()
  expect(liveCell({ scenarioFile: 'a.yaml', scenarioText: 'format: 1' })).toBeNull()
  expect(liveCell({ scenarioFile: 'a.yaml', scenarioText: `${SMALL_LINE}${'#\n'.repeat(160_000)}` })).toBeNull()
})
