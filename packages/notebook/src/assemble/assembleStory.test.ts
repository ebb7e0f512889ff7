import { expect, test } from 'vitest'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { assembleStory } from './assembleStory.ts'

const account = { rows: 2, heads: 1, read: 2, refusals: [] }
const data = {
  skeleton: 'skeleton.yaml',
  written: 'line.yaml',
  files: [{ file: 'data/times.csv', account, said: ['columns: time: "s"'], doubts: [] }],
  unused: ['notes.csv'],
  changes: [{ path: 'stations.S4.work.wire', value: '50 s ± 12 %', from: 'measured, times.csv: 2 times' }],
  notes: ['Not measured, so the skeleton’s times stand: join.'],
  differences: [{ path: 'stations.S4.work.wire', places: [], before: '45 s', after: '50 s ± 12 %' }],
}

test('the terminal and the page tell the same, with and without a change', () => {
  expect(toldTwice(assembleStory(data).cells)).toEqual(TOLD_TWICE)
  expect(toldTwice(assembleStory({ ...data, differences: null, notes: [], unused: [] }).cells)).toEqual(TOLD_TWICE)
})

test('what went where, what is a guess, what changed', () => {
  const { answer, warnings } = assembleStory(data)
  expect(answer.sentences).toEqual([
    '1 value of skeleton.yaml comes from 1 table (2 rows read); the complete scenario is line.yaml.',
    'Since it was written last 1 value has changed.',
  ])
  expect(warnings[0]!.markdown).toContain('"notes.csv" is not used')
  expect(assembleStory({ ...data, differences: [] }).answer.sentences[1]).toBe('Nothing has changed since it was written last.')
})
