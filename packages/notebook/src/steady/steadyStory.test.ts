import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { FOUND, NONE } from '../../../../tests/helpers/steadyResult.ts'
import { steadyStory } from './steadyStory.ts'

const options = { scenarioFile: 'ring.yaml' }

test('the answer first, its figures in a table, then how sure', () => {
  const story = steadyStory(testLine(), FOUND, options)
  expect(story.cells.slice(0, 5).map(({ id }) => id)).toEqual([
    'steady-answer',
    'steady-section',
    'steady-start',
    'steady-figures',
    'steady-sure',
  ])
  // one rounding of the cut on the whole page
  expect(story.chart!.views.of[0]!.content.finding).toContain('The start shows for 95 min')
  const { rows } = story.table!.views.of[0]!.content
  const [answer] = [story.answer.sentences.join(' ')]
  for (const { cells } of rows) expect(answer).toContain(cells[1])
  expect(rows.map(({ values }) => values)).toEqual([
    ['Warm-up to discard', 5658, null, null, 's'],
    ['Steady production that is then enough', 56_580, null, null, 's'],
    ['Units an hour', 42, 41.5, 42.5, 'units/h'],
    ['Products on the loop', 9, 8.5, 9.5, 'products'],
  ])
})

test('no table without a warm-up; a stop is told', () => {
  expect(steadyStory(testLine(), NONE, options)).toMatchObject({ table: null, warnings: [] })
  expect(steadyStory(testLine(), { ...NONE, status: 'stopped' }, options).warnings.map(({ title }) => title)).toEqual(['Stopped early'])
})
