import { readScenario } from '@loopwright/scenario'
import { traceRun } from '@loopwright/study'
import { expect, test } from 'vitest'
import { traceEvents } from '../documents/traceEvents.ts'
import { traceChoice } from './traceChoice.ts'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'

const line = readScenario(SMALL_LINE).scenario!.line
const events = traceEvents((await traceRun(line, { replication: 0 }, { seed: '1' }))!.trace, line)
const chosen = (choice: Parameters<typeof traceChoice>[1]) => events.filter(traceChoice(line, choice))

test('nothing said: every event', () => {
  expect(chosen({})).toEqual(events)
})

test('carriers: their events and no others, each of which is told for one of them', () => {
  const each = [0, 1, 2, 3].map((carrier) => chosen({ carrier: [`${carrier}`] }))
  expect(each.every((some, carrier) => some.length > 100 && some.every((event) => event.carrier === carrier))).toBe(true)
  const withCarrier = events.filter(({ carrier }) => carrier !== null)
  expect(each.reduce((sum, some) => sum + some.length, 0)).toBe(withCarrier.length)
  expect(chosen({ carrier: ['0', '3'] }).length).toBe(each[0]!.length + each[3]!.length)
})

test('a station stands for its work, its zone and its breakdowns', () => {
  const some = chosen({ station: ['B'] })
  const kinds = new Set(some.map(({ event }) => event))
  for (const kind of ['duty start', 'duty end', 'move start', 'rest', 'clear', 'stop begin', 'stop end']) expect(kinds).toContain(kind)
  expect(some.filter(({ event }) => event === 'move start').every(({ place, to }) => place === 'Z05' || to === 'Z05')).toBe(true)
  expect(some.filter(({ event }) => event === 'duty start').length).toBe(
    events.filter((e) => e.event === 'duty start' && e.place === 'B').length,
  )
})

test('a zone: all that comes in and goes out', () => {
  const moves = chosen({ zone: ['Z03'] }).filter(({ event }) => event === 'move start')
  expect(moves.length).toBeGreaterThan(100)
  expect(moves.every(({ place, to }) => place === 'Z03' || to === 'Z03')).toBe(true)
})

test('a stretch of time, both ends in it', () => {
  const at = events[1000]!.seconds
  const some = chosen({ from: at, to: at })
  expect(some.length).toBeGreaterThan(0)
  expect(some.every(({ seconds }) => seconds === at)).toBe(true)
  expect(() => traceChoice(line, { from: 2, to: 1 })).toThrow('--from lies after --to')
})

test('names that the line does not have', () => {
  expect(() => traceChoice(line, { station: ['D'] })).toThrow('there is no station "D"')
  expect(() => traceChoice(line, { zone: ['Z55'] })).toThrow('did you mean Z05?')
  expect(() => traceChoice(line, { carrier: ['4'] })).toThrow('carriers are numbered 0 to 3')
})
