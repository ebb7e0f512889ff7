import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Job, jobId, lineDigest, queueOf, readJob, resultKey } from './job.ts'

const JOB: Job = {
  mark: '0.1.0-0011',
  key: 'ab'.repeat(32),
  line: lineDigest('{}'),
  carriers: 4,
  seed: '1',
  from: 50,
  to: 100,
  want: 'rows',
}

test('a job comes back from its text', () => {
  expect(readJob(JSON.parse(JSON.stringify({ ...JOB, more: 1 })))).toEqual(JOB)
})

test('its name is that of its runs, and fit for a queue: no colon', () => {
  expect(jobId(JOB)).toBe(`${'ab'.repeat(32)}-50-100`)
  expect(jobId(JOB) + queueOf(JOB.mark)).not.toContain(':')
  expect(resultKey(JOB.mark, jobId(JOB))).toMatch(/^loopwright:result:0\.1\.0-0011:abab/)
})

test.each([
  ['nothing', null],
  ['text', 'job'],
  ['no key', { ...JOB, key: undefined }],
  ['a key with a path', { ...JOB, key: `../${'a'.repeat(61)}` }],
  ['another kind', { ...JOB, want: 'traces' }],
  ['backwards', { ...JOB, from: 100, to: 50 }],
  ['too many', { ...JOB, to: 1e7 }],
  ['a part of a replication', { ...JOB, from: 0.5 }],
  ['a seed that is a number', { ...JOB, seed: 1 }],
])('what is none is refused: %s', (_, data) => expect(() => readJob(data)).toThrow(RangeError))

test('anything else gives a job or a refusal, never something else', () => {
  fc.assert(
    fc.property(fc.anything(), (data) => {
      try {
        readJob(data)
        return false
      } catch (error) {
        return error instanceof RangeError
      }
    }),
    { seed: 1, numRuns: 500 },
  )
})
