import { expect, test } from 'vitest'
import { type StudyTold, studySentences, studySureSentences } from './studyWords.ts'

const step = (from: number, low: number, mean: number, high: number) => ({
  from,
  to: from + 1,
  difference: { mean, low, high, halfWidth: (high - low) / 2, status: 'difference shown' },
})
const counts = [20, 100].map((replications) => ({ replications }))
const told = (change: object = {}): StudyTold =>
  ({
    answer: { chosen: 10, within: 0.01, level: 0.95 },
    flat: { from: 10, to: 12 },
    steps: [step(9, 4, 5, 6), step(10, 1.4, 1.9, 2.5)],
    settled: true,
    looks: [{ undecided: null }],
    law: { carriersLow: 9, carriersHigh: 14 },
    partial: false,
    chance: true,
    counts,
    ...change,
  }) as unknown as StudyTold
const words = { one: 'shift', each: 'a shift', many: 'shifts', plan: null, line: 'loop', named: null } as const

test('the flat zone, one more and one fewer, and what mean times say', () =>
  expect(studySentences(told(), words)).toEqual([
    'From 10 to 12 carriers output stays within 1\u202f% of the best.',
    'One carrier more than 10 brings 1.9 units a shift (1.4 to 2.5); one fewer costs 5.0 units a shift (4.0 to 6.0).',
    'By mean times alone carriers are short below 9, and free zones to move into beyond 14.',
  ]))

test('a step that goes the other way is told so', () =>
  expect(studySentences(told({ steps: [step(10, -6, -5, -4)], flat: null, law: null }), words)).toEqual([
    'One carrier more than 10 costs 5.0 units a shift (4.0 to 6.0).',
  ]))

test('without an answer there is no step, and nothing to be sure of', () => {
  expect(studySentences(told({ answer: null, law: null }), words)).toEqual([])
  expect(studySureSentences(told({ answer: null }), words)).toEqual([])
})

test('how many runs it took, and whether that was enough', () => {
  const wrong = 'A study like this names too few carriers in at most 5 of 100 cases.'
  expect(studySureSentences(told(), words)).toEqual([`Settled with 20 to 100 shifts of each count, most of those in question. ${wrong}`])
  expect(studySureSentences(told({ counts: counts.slice(0, 1), settled: false }), words)).toEqual([
    `Not settled with 20 shifts of each count. ${wrong}`,
  ])
  expect(studySureSentences(told({ settled: false, looks: [{ undecided: 9 }] }), words)[0]).toContain(
    'whether 9 carriers are enough is still open',
  )
  expect(studySureSentences(told({ chance: false }), words)).toEqual([])
  expect(studySureSentences(told({ partial: true }), words)).toEqual([`Stopped before the question was settled. ${wrong}`])
})
