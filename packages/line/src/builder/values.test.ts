import { expect, test } from 'vitest'
import { sentences } from '../check/sentences.ts'
import { STORE } from '../spec.ts'
import { createReport } from './report.ts'
import { amount, namesOf, refer, referPlace, share, time, whole } from './values.ts'

const zones = namesOf(['Z01', 'Z02', 'Z01'], sentences.unknownZone)

test('a part by name, the first of that name, or by its place; the store by its word', () => {
  const report = createReport()
  expect([refer(report, 'a', 'Z02', zones), refer(report, 'a', 'Z01', zones), refer(report, 'a', 2, zones)]).toEqual([1, 0, 2])
  expect([referPlace(report, 'a', 'store', zones), referPlace(report, 'a', 0, zones)]).toEqual([STORE, 0])
  expect(report.problems).toEqual([])
  refer(report, 'a', 3, zones)
  expect(report.problems.map(({ code }) => code)).toEqual(['E_UNKNOWN_ZONE'])
})

test('numbers and times as they are, in their ranges', () => {
  const report = createReport()
  expect([amount(report, 'a', 0, 'zero'), whole(report, 'a', 1, 1), share(report, 'a', 1)]).toEqual([0, 1, 1])
  expect(time(report, 'a', 2)).toEqual({ kind: 'constant', value: 2 })
  expect(time(report, 'a', { kind: 'exponential', mean: 2 })).toEqual({ kind: 'exponential', mean: 2 })
  expect(report.problems).toEqual([])
})
