import { expect, test } from 'vitest'
import { carrierStays } from './carrierStays.ts'
import { traceRun } from '../runs/replicate.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const line = stationLoop()
const { run, trace } = (await traceRun(line, { replication: 0 }, { seed: 'stays' }))!
const stays = carrierStays(trace, line)

test('each carrier is always in one zone: its stays follow each other without a gap, zone after zone', () => {
  for (let carrier = 0; carrier < 3; carrier += 1) {
    const own = stays.filter((stay) => stay.carrier === carrier)
    expect(own[0]!.enterSeconds).toBe(0)
    expect(own.at(-1)!.leaveSeconds).toBeNull()
    for (const [index, stay] of own.slice(1).entries()) {
      expect(stay.enterSeconds).toBe(own[index]!.leaveSeconds)
      expect(stay.zone).toBe((own[index]!.zone + 1) % 8)
    }
  }
})

test('enter, rest, work, done, leave: in this order', () => {
  for (const { enterSeconds, restSeconds, works, doneSeconds, leaveSeconds } of stays) {
    const instants = [enterSeconds, restSeconds, ...works.flat(), doneSeconds, leaveSeconds].filter((each) => each !== null)
    expect(instants).toEqual([...instants].sort((a, b) => a - b))
  }
})

test('work and release in the window are the station’s time at work, as the collectors have it', () => {
  const { warmupSeconds, endSeconds } = line.window
  const within = ([from, to]: readonly [number, number]): number => Math.max(0, Math.min(to, endSeconds) - Math.max(from, warmupSeconds))
  // station A is never held: its breakdowns are none, and the break holds it only while no work is under way at its edges
  const worked = stays.filter(({ zone }) => zone === 4).flatMap(({ works }) => works.map(within))
  const held = run.stations[2]!.seconds.break
  const total = worked.reduce((sum, each) => sum + each, 0)
  const working = run.stations[2]!.seconds.working
  expect(total).toBeGreaterThanOrEqual(working)
  expect(total).toBeLessThanOrEqual(working + held)
})

test('means over the window of carriers in each zone', () => {
  const { warmupSeconds, endSeconds } = line.window
  for (const [index, zone] of run.zones.entries()) {
    const seconds = stays
      .filter((stay) => stay.zone === index)
      .reduce((sum, stay) => sum + Math.max(0, (stay.leaveSeconds ?? endSeconds) - Math.max(stay.enterSeconds, warmupSeconds)), 0)
    expect(seconds / (endSeconds - warmupSeconds)).toBeCloseTo(zone.occupancyMean, 9)
  }
})
