import { type RunResult, STATION_STATES, ZONE_STATES } from '@loopwright/line'
import { expect, test } from 'vitest'
import { replicate } from './replicate.ts'
import { rowLayout, runRow } from './runRow.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const spec = stationLoop()
const layout = rowLayout(spec)
const run = (await replicate(spec, { replications: 1 }, { seed: '3', workers: 0 }))[0]!

test('each number of a run has its place, and no two share one', () => {
  const row = runRow(layout, run)
  expect(row.length).toBe(layout.length)
  expect(row[layout.units]).toBe(run.output)
  expect(row[layout.events]).toBe(run.events)
  expect(row[layout.lapSeconds]).toBe(run.lap.mean)
  expect(row[layout.timeInLineSeconds]).toBe(run.timeInLine.mean)
  expect([...row.subarray(layout.outputByHour, layout.outputByHour + layout.hours)]).toEqual(run.outputByHour)
  for (const [index, station] of run.stations.entries()) {
    const at = layout.station + index * layout.stationStride
    expect([...row.subarray(at, at + STATION_STATES.length)]).toEqual(Object.values(station.seconds))
    expect(row[at + STATION_STATES.length]).toBe(station.longestBlockSeconds)
    for (const { cause, seconds } of station.stoppedBy)
      expect(row[at + STATION_STATES.length + 1 + layout.causes.indexOf(cause)]).toBe(seconds)
  }
  for (const [index, zone] of run.zones.entries()) {
    const at = layout.zone + index * layout.zoneStride
    expect([...row.subarray(at, at + ZONE_STATES.length)]).toEqual(Object.values(zone.seconds))
    expect(row[at + ZONE_STATES.length]).toBe(zone.occupancyMean)
  }
  expect(layout.causes).toEqual(['jam', 'break'])
  expect([...row.subarray(layout.cause, layout.cause + 4)]).toEqual([
    run.breakdowns[0]!.seconds,
    run.breakdowns[0]!.count,
    run.breaks.seconds,
    run.breaks.count,
  ])
  const carrierSeconds = row.subarray(layout.carrierStates).reduce((sum, seconds) => sum + seconds, 0)
  expect(carrierSeconds).toBe(3 * 3600)
})

test('what a run does not have is no number', () => {
  const none: RunResult = { ...run, lap: { ...run.lap, mean: null } }
  expect(runRow(layout, none)[layout.lapSeconds]).toBeNaN()
})

test('a stop that the line does not have is a defect', () => {
  const strange = { ...run, stations: run.stations.map((station) => ({ ...station, stoppedBy: [{ cause: 'ghost', seconds: 1 }] })) }
  expect(() => runRow(layout, strange)).toThrow('ghost')
})
