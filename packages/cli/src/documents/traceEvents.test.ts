import { traceLine } from '@loopwright/notebook/trace'
import { readScenario } from '@loopwright/scenario'
import { TRACE_KINDS } from '@loopwright/line'
import { traceRun } from '@loopwright/study'
import { expect, test } from 'vitest'
import { traceEvents } from './traceEvents.ts'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'

const line = readScenario(SMALL_LINE).scenario!.line

test('names and words in place of numbers', () => {
  const rows = [
    ['move start', 9, 3, 1],
    ['duty start', 1, 3, 2],
    ['load', 0, 3, 17],
    ['change end', 4, 3, 1],
    ['stop begin', 0, -1, 0],
    ['break begin', -1, -1, 0],
    ['clear', 2, 3, 0],
  ] as const
  const column = (at: 1 | 2 | 3) => rows.map((row) => row[at])
  const kinds = rows.map(([kind]) => TRACE_KINDS.indexOf(kind))
  const events = traceEvents(
    { seconds: rows.map((_, index) => index), kinds, places: column(1), carriers: column(2), details: column(3) },
    line,
  )
  expect(events.map(({ to }) => to)).toEqual(['Z01', null, null, null, null, null, null])
  expect(events.map(({ place, carrier, detail }) => [place, carrier, detail])).toEqual([
    ['Z10', 3, 'at speed'],
    ['B', 3, 'work'],
    ['Z01', 3, 17],
    ['Z05', 3, 'back'],
    ['jam', null, null],
    [null, null, null],
    ['Z03', 3, null],
  ])
})

test('the events of a run: in order, the loads and unloads of its products among them', async () => {
  const traced = (await traceRun(line, { replication: 0 }, { seed: '1' }))!
  const events = traceEvents(traced.trace, line)
  expect(events.every((event, index) => index === 0 || event.seconds >= events[index - 1]!.seconds)).toBe(true)
  const { warmupSeconds, endSeconds } = line.window
  const judged = (kind: string) => events.filter(({ event, seconds }) => event === kind && seconds > warmupSeconds && seconds <= endSeconds)
  expect(judged('unload').map(({ seconds }) => seconds)).toEqual(traced.run.outputSeconds)
  expect(judged('load').length).toBe(traced.run.loads)
  expect(new Set(judged('unload').map(({ place }) => place))).toEqual(new Set(['Z08']))
})

test('every event of a run has its words, in 80 columns', async () => {
  const events = traceEvents((await traceRun(line, { replication: 0 }, { seed: '1' }))!.trace, line)
  const lines = events.map(traceLine)
  expect(lines.every((text) => text.length <= 80 && !/null|undefined|NaN/.test(text))).toBe(true)
  expect(new Set(events.map(({ event }) => event)).size).toBeGreaterThan(8)
})
