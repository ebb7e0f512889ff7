import { describe, expect, test } from 'vitest'
import { cellTables } from '../cells/cellTables.ts'
import { terminalText } from '../terminal/terminal.ts'
import { read } from '../../../../tests/helpers/checkedLine.ts'
import { EXACT_LINE, OPEN_LINE, SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { checkStory } from './checkStory.ts'

const storyOf = (text: string) => {
  const { scenario, notes, problems } = read(text)
  return checkStory(scenario, notes, { scenarioFile: 'line.yaml', scenarioText: text, problems })
}
const told = (text: string): string =>
  storyOf(text)
    .cells.map((cell) => terminalText(cell))
    .filter((each) => each !== '')
    .join('\n\n')

describe.each([
  ['a loop with shifts', SMALL_LINE],
  ['a loop without chance', EXACT_LINE],
  ['an open line', OPEN_LINE],
])('%s', (_, text) => {
  test('the verdict comes first; the terminal keeps to 80 columns', () => {
    const story = storyOf(text)
    expect(story.cells[0]).toBe(story.answer)
    expect(told(text)).toMatch(/can be simulated/)
    for (const line of told(text).split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })

  test('cells have ids of their own; every table is a file', () => {
    const { cells } = storyOf(text)
    expect(new Set(cells.map(({ id }) => id)).size).toBe(cells.length)
    const tables = cells.filter(({ kind }) => kind === 'table' || kind === 'plan').map(({ id }) => id)
    expect(cellTables(cells).map(({ name }) => name)).toEqual([...tables, 'columns'])
  })
})

test('warnings of the scenario are cells, and counted', () => {
  const text = SMALL_LINE.replace('judge: second shift', 'judge: first shift')
  const story = storyOf(text)
  expect(story.warnings).toHaveLength(1)
  expect(story.cells[1]).toBe(story.warnings[0])
  expect(story.answer.sentences[0]).toContain('no errors, 1 warning.')
})

test('an open line is not called a loop, and no law is claimed', () => {
  expect(told(OPEN_LINE)).toContain('Open line: 4 zones')
  expect(told(OPEN_LINE).replaceAll(/\s+/g, ' ')).not.toMatch(/\bthe loop (is|makes)|Loop:/)
})

test('ways and people stand open, other inputs are details of the page', () => {
  const open = storyOf(OPEN_LINE).assumptions.filter(({ pageOnly }) => pageOnly !== true)
  expect(open.map(({ id }) => id)).toEqual(['section-inputs', 'inputs-general'])
})
