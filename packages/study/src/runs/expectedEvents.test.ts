import { lawOrNull } from '@loopwright/line/bounds'
import { describe, expect, test } from 'vitest'
import { generalLine } from '../../../../tests/bench/lines.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { eventWords, expectedEvents, needsFewEvents, tooManyEvents } from './expectedEvents.ts'
import { replicate } from './replicate.ts'

const constant = (value: number) => ({ kind: 'constant', value }) as const

test.each([
  ['a loop', stationLoop()],
  ['lanes with operators and arrivals', generalLine(8)],
])('%s: no fewer than there are, and of their order', async (_, line) => {
  const [run] = await replicate(line, { replications: 1 }, { seed: '1', workers: 0, engine: 'events' })
  const expected = expectedEvents(line, lawOrNull(line), line.carriers.count)
  expect(expected / run!.events).toBeGreaterThan(0.9)
  expect(expected / run!.events).toBeLessThan(10)
})

test('arrivals and stops by their mean times, no more often than the clock ticks', () => {
  const calm = stationLoop({ breakdowns: [] })
  const seconds = calm.window.endSeconds
  const events = (line: typeof calm): number => expectedEvents(line, lawOrNull(calm), 3) - expectedEvents(calm, lawOrNull(calm), 3)
  const stop = { name: 'jam', part: { kind: 'station', index: 0 }, clock: 'calendar' } as const
  const often = { ...stop, timeToFailureSeconds: constant(0.5), repairSeconds: constant(0.5) }
  expect(events({ ...calm, breakdowns: [often] })).toBeCloseTo(2 * seconds, 3)
  const never = { ...stop, timeToFailureSeconds: constant(0), repairSeconds: constant(1e-12) }
  expect(events({ ...calm, breakdowns: [never] })).toBeCloseTo(2 * seconds * 2 ** 20, -3)
  const arrivals = { kind: 'every', seconds: { kind: 'exponential', mean: 0.25 } } as const
  expect(events({ ...calm, supply: { name: 'supply', arrivals, queueLimit: null } })).toBeCloseTo(4 * seconds, 3)
})

describe('a study that would take hours', () => {
  const often = { name: 'jam', part: { kind: 'station', index: 0 }, clock: 'calendar' } as const
  const line = stationLoop({ breakdowns: [{ ...often, timeToFailureSeconds: constant(1e-6), repairSeconds: constant(1e-6) }] })

  test('is refused with what it asks for', async () => {
    await expect(replicate(line, { replications: 20 }, { seed: '1', workers: 0 })).rejects.toThrow(
      /this asks for about 1.4·10¹¹ events, [\d.]+ hours of a core/,
    )
  })

  test('is begun where it is meant, and can be stopped', async () => {
    const stop = new AbortController()
    setTimeout(() => stop.abort(), 50)
    expect(
      await replicate(line, { replications: 20 }, { seed: '1', workers: 0, long: true, engine: 'events', signal: stop.signal }),
    ).toEqual([])
  })

  test('none is for what is not known', () => expect(() => needsFewEvents(Number.NaN)).not.toThrow())
})

test('events in words, with the time that they take', () => {
  expect(eventWords(1.2e8)).toBe('1.2·10⁸ events, 12 s of a core')
  expect(eventWords(4e9)).toBe('4·10⁹ events, 6.7 minutes of a core')
  expect(eventWords(1e12)).toBe('1·10¹² events, 28 hours of a core')
  expect(tooManyEvents(generalLine(8))).toBeNull()
})
