import { readTable, readTimes, timeStudy } from '@loopwright/measure'
import { describe, expect, test } from 'vitest'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { timesStory } from './timesStory.ts'

/** Invented: wiring drifts, sealing is rounded to 5 s and has one time far out, loading was timed once; a row is no time. */
const CSV = [
  'task;variant;operator;time (s)',
  ...Array.from({ length: 24 }, (_, index) =>
    `wire;small;${index % 2 === 0 ? 'A' : 'B'};${60 - index + ((index * 7) % 5) / 2}`.replace('.', ','),
  ),
  ...Array.from({ length: 24 }, (_, index) => `seal;small;A;${45 + 5 * ((index * 7) % 3) + (index === 20 ? 100 : 0)}`),
  'load;small;A;30',
  'load;small;A;soon',
].join('\n')

const table = readTimes(readTable(new TextEncoder().encode(CSV), 'times.csv'))
const story = timesStory([table], timeStudy(table.observations, { samples: 39 }))

test('the terminal and the page tell the same', () => expect(toldTwice(story.cells)).toEqual(TOLD_TWICE))

test('the answer says what is known and what to time', () => {
  expect(story.answer.figures![0]).toMatchObject({ value: '0', sure: 'of 3' })
  expect(story.answer.sentences[0]).toBe('3 tasks and variants, timed 49 times; no mean is known to ± 5\u202f% or better.')
  expect(story.answer.sentences[1]).toMatch(/^For ± 5\u202f% time seal, small \d+ more, wire, small \d+ more cycles\.$/)
  expect(story.answer.sentences[2]).toBe('One time says nothing of how it spreads: load, small.')
})

describe('what looks odd is told', () => {
  const told = Object.fromEntries(story.warnings.map(({ id, markdown }) => [id, markdown]))
  test.each([
    ['warning-times-refused', 'line 51, column 4 ("time (s)"): "soon" is no time.'],
    ['warning-times-rounding', 'seal, small: 100\u202f% of the times are multiples of 5 s.'],
    ['warning-times-outliers', 'seal, small: line 46, column 4 ("time (s)")'],
    ['warning-times-trend', 'wire, small: from the first to the last time they fall by'],
    ['warning-times-few', 'load, small: 1.'],
  ])('%s', (id, text) => expect(told[id]).toContain(text))
})

test('rows read and refused are all rows', () => {
  expect(story.read.markdown).toContain('times.csv: 50 rows below 1 row of heads: 49 read + 1 refused.')
  expect(story.refused[0]!.views.of[0]!.content.rows.map(({ values }) => values)).toEqual([
    ['times.csv', 'line 51, column 4 ("time (s)")', '"soon" is no time', 'row'],
  ])
})

test('a task alone needs no switch, and its charts are there', () => {
  const one = timesStory(
    [table],
    timeStudy(
      table.observations.filter(({ task }) => task === 'seal'),
      { samples: 39 },
    ),
  )
  expect([one.choice, one.charts.map(({ id, views }) => [id, views.choice])]).toEqual([
    null,
    [
      ['times-spread', null],
      ['times-ranks', null],
      ['times-run', null],
    ],
  ])
  expect(() => timesStory([table], [])).toThrow(RangeError)
})

test('of very many times some are drawn, and the drift told of them is that of all', () => {
  // every time is 1 ms longer than the one before, and four of five a little off, both ways alike
  const rows = Array.from({ length: 2001 }, (_, index) => `wire,${(40 + index / 1000 + ((index % 5) - 2) / 10).toFixed(4)}`)
  const many = readTimes(readTable(new TextEncoder().encode(`task,seconds\n${rows.join('\n')}\n`), 'times.csv'))
  const { charts } = timesStory([many], timeStudy(many.observations, { samples: 19 }))
  const found = charts.map(({ views }) => views.of[0]!.content.finding)
  expect(found[0]).toContain('wire (one of every 2 times): 39.8 to 42.2 s, 41.0 s on average')
  expect(found[2]).toMatch(/^wire \(one of every 2 times\), 1001 times in their order: from the first to the last they rise by 2\.0 s/)
})
