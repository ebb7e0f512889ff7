import { expect, test } from 'vitest'
import { sentences } from '../check/sentences.ts'
import { createReport, LineError } from './report.ts'

test('each finding once, and all in one message', () => {
  const report = createReport()
  report.add('end', sentences.zero('0'))
  report.add('end', sentences.zero('0'))
  report.add('warmup', sentences.negative('-1'))
  expect(new LineError(report.problems).message).toBe(
    '2 problems\nend: "0" is zero; write more than 0\nwarmup: "-1" is negative; write 0 or more',
  )
  expect(new LineError(report.problems.slice(0, 1)).message).toBe('end: "0" is zero; write more than 0')
})

test('of a place that cannot be read nothing more is said, nor of what stands in it', () => {
  const report = createReport()
  report.close('stations.S1', sentences.wrongType('a set of keys', 'a list'))
  report.add('stations.S1', sentences.noDuty('S1'))
  report.add('stations.S1.zone', sentences.negative('-1'))
  report.add('stations.S10', sentences.noDuty('S10'))
  expect(report.problems.map(({ path, code }) => `${code} ${path}`)).toEqual(['E_TYPE stations.S1', 'E_NO_DUTY stations.S10'])
})
