import { readStops, readTable, stopStudy } from '@loopwright/measure'
import { expect, test } from 'vitest'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { stopLogStory } from './stopLogStory.ts'

const CSV = `station,cause,start,end
S3,tool,2026-11-03 06:10,2026-11-03 06:20
S3,tool,2026-11-03 08:10,2026-11-03 08:25
S3,tool,2026-11-03 10:10,2026-11-03 10:19
S3,air,2026-11-03 10:15,2026-11-03 10:30
S6,leak,2026-11-03 11:00,
S6,leak,soon,2026-11-03 11:00
`
const log = readStops(readTable(new TextEncoder().encode(CSV), 'stops.csv'))
const story = stopLogStory([log], stopStudy(log.stops))

test('the terminal and the page tell the same', () => expect(toldTwice(story.cells)).toEqual(TOLD_TWICE))

test('the answer names the least available place; what is odd is told', () => {
  for (const { value } of story.answer.figures!) expect(story.answer.sentences.join(' ')).toContain(value)
  expect(story.answer.sentences[0]).toMatch(
    /^5 stops from 2026-11-03 06:10 to 2026-11-03 11:00; least available was S3: 84\.5 % of the time, /,
  )
  expect(story.warnings.map(({ id }) => id)).toEqual([
    'warning-stoplog-refused',
    'warning-stoplog-ends',
    'warning-stoplog-overlaps',
    'warning-stoplog-open',
    'warning-stoplog-few',
  ])
  expect(story.read.markdown).toContain('6 rows below 1 row of heads: 5 read + 1 refused.')
  expect(() => stopLogStory([], { ...stopStudy(log.stops), times: [] })).toThrow(RangeError)
})
