import { expect, test } from 'vitest'
import { lineFacts } from './lineFacts.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

test('the facts of a small loop, by hand', () => {
  const facts = lineFacts(stationLoop())
  expect(facts.loopMetres).toBeNull()
  expect(facts.transfers).toEqual([])
  expect(facts.stations).toEqual([
    {
      name: 'A',
      title: 'Load',
      zone: 'Z1',
      duties: ['load'],
      workSeconds: 8,
      releaseSeconds: 1,
      moveAndClearSeconds: 3,
      exchangeSeconds: 12,
    },
    {
      name: 'B',
      title: 'Fit',
      zone: 'Z3',
      duties: ['work'],
      workSeconds: 20,
      releaseSeconds: 1,
      moveAndClearSeconds: 3,
      exchangeSeconds: 24,
    },
    {
      name: 'C',
      title: 'Unload',
      zone: 'Z5',
      duties: ['unload'],
      workSeconds: 6,
      releaseSeconds: 1,
      moveAndClearSeconds: 3,
      exchangeSeconds: 10,
    },
  ])
  expect(facts.slowestStation).toBe(1)
  expect(facts.variants).toEqual([{ name: 'one', share: 1 }])
  expect(facts.stops).toEqual([{ name: 'jam', at: 'station B', clock: 'operating', timeToFailureSeconds: 1800, repairSeconds: 60 }])
  expect(facts.law!.lapSeconds).toBe(8 * 2 + 8 + 20 + 6 + 3)
})

test('lengths add up; transfers are told by name; parts that stop by their names', () => {
  const plain = stationLoop()
  const facts = lineFacts(
    stationLoop({
      zones: plain.zones.map((zone, index) => ({
        ...zone,
        lengthMetres: 1.5,
        transfer: index === 3 || index === 5 ? { liftSeconds: 2, lowerSeconds: 1, enterOnlyIfExitClear: index === 3 } : null,
      })),
      breakdowns: [
        { ...plain.breakdowns[0]!, name: 'belt', part: { kind: 'transfer', index: 3 } },
        { ...plain.breakdowns[0]!, name: 'power', part: { kind: 'section', index: 0 }, clock: 'calendar' },
      ],
    }),
  )
  expect(facts.loopMetres).toBe(12)
  expect(facts.transfers).toEqual(['Z4', 'Z6'])
  expect(facts.exitClearTransfers).toEqual(['Z4'])
  expect(facts.stops.map((stop) => stop.at)).toEqual(['transfer Z4', 'the whole line'])
})
