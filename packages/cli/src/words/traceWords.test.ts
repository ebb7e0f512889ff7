import { readScenario } from '@loopwright/scenario'
import { tracedRun } from '@loopwright/study'
import { expect, test } from 'vitest'
import { traceEvents } from '../documents/traceEvents.ts'
import { SMALL_LINE } from '../memoryShell.ts'
import { clockText, traceLine } from './traceWords.ts'

test('time to the millisecond', () => {
  expect([0, 59.9996, 3661.25, 36_000].map(clockText)).toEqual(['0:00:00.000', '0:01:00.000', '1:01:01.250', '10:00:00.000'])
})

test('events in words', () => {
  const plain = { seconds: 61.5, carrier: 3, place: 'Z04', to: null, detail: null }
  expect(traceLine({ ...plain, event: 'move start', to: 'Z05', detail: 'at speed' })).toBe(
    ' 0:01:01.500        3  leaves Z04 for Z05, at speed',
  )
  expect(traceLine({ ...plain, event: 'load', detail: 17 })).toBe(' 0:01:01.500        3  takes product 17 in Z04')
  expect(traceLine({ ...plain, event: 'stop begin', place: 'jam', carrier: null })).toBe(' 0:01:01.500           jam: stopped')
})

test('every event of a run has its words, in 80 columns', async () => {
  const { line } = readScenario(SMALL_LINE, 'line.yaml').scenario!
  const events = traceEvents((await tracedRun(line, { seed: '1', replication: 0 }))!.trace, line)
  const lines = events.map(traceLine)
  expect(lines.every((text) => text.length <= 80 && !/null|undefined|NaN/.test(text))).toBe(true)
  expect(new Set(events.map(({ event }) => event)).size).toBeGreaterThan(8)
})
