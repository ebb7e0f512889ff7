import { describe, expect, test } from 'vitest'
import { readTable } from '../table/bytes.ts'
import { readStops, type Stop } from './readStops.ts'
import { stopStudy } from './stopStudy.ts'
import { workingHours } from './workingHours.ts'

const stop = (start: number, end: number | null, more: Partial<Stop> = {}): Stop => ({
  place: 'S3',
  cause: 'tool',
  start,
  end,
  line: start / 60 + 2,
  ...more,
})

test('exposure over stops, with the interval of a count of ten', () => {
  // ten stops of 10 min, one each 100 min: the clock ran 900 of 1000 min
  const stops = Array.from({ length: 10 }, (_, index) => stop((index * 100 + 50) * 60, (index * 100 + 60) * 60))
  const [times] = stopStudy(stops, { from: 0, to: 60_000 }).times
  expect([times!.n, times!.exposure, times!.between]).toEqual([10, 54_000, 5400])
  // Garwood (1936), table of exact limits of a Poisson count of 10 at 95 %: 4.795 and 18.390 (from memory)
  expect(54_000 / times!.betweenLow).toBeCloseTo(18.39, 2)
  expect(54_000 / times!.betweenHigh!).toBeCloseTo(4.795, 3)
  expect([times!.repair, times!.after, times!.lasts]).toEqual([600, { kind: 'exponential', mean: 5400 }, { kind: 'constant', value: 600 }])
})

test('a stop that lies wholly in hours without work is told and does not count; one that reaches into them does', () => {
  const hours = workingHours('06:00-14:00')
  if (!hours.ok) throw new Error(hours.reason)
  const stops = [stop(7 * 3600, 8 * 3600), stop(13 * 3600, 15 * 3600), stop(20 * 3600, 21 * 3600)]
  const study = stopStudy(stops, { from: 0, to: 86_400, hours: hours.value })
  expect([study.outside, study.times[0]!.n]).toEqual([[{ place: 'S3', line: 1202 }], 2])
  expect(stopStudy(stops, { from: 0, to: 86_400 }).outside).toEqual([])
})

test('a calendar clock runs through the stops; working hours alone count', () => {
  const day = 86_400
  const stops = [0, 1, 2].map((index) => stop(index * day + 8 * 3600, index * day + 9 * 3600))
  const hours = workingHours('06:00-14:00')
  if (!hours.ok) throw new Error(hours.reason)
  const request = { from: 0, to: 3 * day, hours: hours.value }
  expect(stopStudy(stops, request).times[0]!.exposure).toBe(3 * 7 * 3600)
  expect(stopStudy(stops, { ...request, clock: 'calendar' }).times[0]!.exposure).toBe(3 * 8 * 3600)
  expect(stopStudy(stops, request).places[0]).toMatchObject({ availability: 1 - 1 / 8 })
})

test('short stops are told apart', () => {
  const stops = [stop(600, 640), stop(6000, 6900), stop(12_000, 12_050), stop(20_000, 20_700), stop(30_000, 30_900)]
  expect(stopStudy(stops, { from: 0, to: 36_000 }).times.map(({ short, n }) => [short, n])).toEqual([
    [false, 3],
    [true, 2],
  ])
})

describe('what the ends of a log cut off', () => {
  test('a stop that is not over counts with what it has lasted', () => {
    const stops = [stop(1000, 1600), stop(5000, 5600), stop(9000, 9600), stop(15_000, null)]
    const [times] = stopStudy(stops, { from: 0, to: 15_300 }).times
    // three repairs of 600 s ended, and 300 s more were waited for
    expect([times!.open, times!.repair, times!.n]).toEqual([1, 700, 4])
    expect(times!.exposure).toBe(15_300 - 3 * 600 - 300)
  })
  test('a stop that was there when it began tells no time between', () => {
    const stops = [stop(-600, 600), stop(5000, 5600), stop(9000, 9600), stop(12_000, 12_600)]
    expect(stopStudy(stops, { from: 0, to: 15_000 }).times[0]).toMatchObject({ n: 3, exposure: 15_000 - 600 - 3 * 600 })
  })
  test('ends that were not given are told', () => {
    expect(stopStudy([stop(0, 600), stop(1000, 1600)]).endsGuessed).toBe(true)
    expect(stopStudy([stop(0, 600)], { from: 0, to: 1 }).endsGuessed).toBe(false)
  })
})

test('stops over each other are told, and the time stood is counted once', () => {
  const stops = [stop(600, 1800, { line: 2 }), stop(1200, 2400, { cause: 'air', line: 3 })]
  const study = stopStudy(stops, { from: 0, to: 6000 })
  expect(study.overlaps).toEqual([{ place: 'S3', lines: [2, 3] }])
  expect(study.places[0]).toMatchObject({ down: 1800 })
  // of one cause they are one stop
  expect(
    stopStudy(
      stops.map((one) => ({ ...one, cause: 'tool' })),
      { from: 0, to: 6000 },
    ).times[0]!.n,
  ).toBe(1)
})

test('too few stops: what stands in is said', () => {
  const [times] = stopStudy([stop(600, 1200)], { from: 0, to: 36_000 }).times
  expect(times!.standsIn).toBe('1 stop of it: too few to tell; a tool: 5 min every 10 h stands in (common practice, no source)')
  expect(times!.after).toEqual({ kind: 'exponential', mean: 36_000 })
})

test('availability lies within its interval, which narrows with more stops', () => {
  const of = (n: number) =>
    stopStudy(
      Array.from({ length: n }, (_, index) => stop(index * 6000 + 3000, index * 6000 + 3000 + 300 + 60 * (index % 5))),
      { from: 0, to: n * 6000 },
    ).places[0]!
  const [few, many] = [of(5), of(50)]
  for (const place of [few, many]) {
    expect(place.low!).toBeLessThan(place.availability)
    expect(place.high!).toBeGreaterThan(place.availability)
  }
  expect(many.high! - many.low!).toBeLessThan((few.high! - few.low!) / 2)
})

test('a log of a file', () => {
  const text =
    'station,cause,start,end\nS3,tool,2026-11-03 06:10,2026-11-03 06:20\nS3,tool,2026-11-03 08:10,2026-11-03 08:20\nS3,tool,2026-11-03 10:10,2026-11-03 10:20\n'
  const log = readStops(readTable(new TextEncoder().encode(text), 's.csv'))
  expect(stopStudy(log.stops).times[0]).toMatchObject({ place: 'S3', n: 3, repair: 600 })
})
