import { simulate } from '@loopwright/line'
import { expect, test } from 'vitest'
import { rowLayout, runRow } from '../runs/runRow.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { meanOfOthers, runUseOf } from './runUse.ts'

test('the mean of the others leaves one out', () => {
  const use = (units: number) => ({ units, operatingSeconds: [10 * units, 0], watchedMoves: [units + 1] })
  const others = meanOfOthers([use(1), use(2), use(6)])
  expect(others(0)).toEqual({ units: 4, operatingSeconds: [40, 0], watchedMoves: [5] })
  expect(others(2)).toEqual({ units: 1.5, operatingSeconds: [15, 0], watchedMoves: [2.5] })
})

test('a station operates while it works, without its release; a source by the calendar needs nothing', () => {
  const spec = stationLoop()
  const layout = rowLayout(spec)
  const use = runUseOf(spec, layout)
  const run = simulate(spec, { seed: '3', replication: 0 })
  const { units, operatingSeconds, watchedMoves } = use(runRow(layout, run))
  expect(units).toBe(run.output)
  // work of 20 s in a stay of 21 s
  expect(operatingSeconds[0]).toBeCloseTo((run.stations[1]!.seconds.working * 20) / 21, 9)
  expect(watchedMoves).toEqual([0, 0, 0])
  const calendar = { ...spec, breakdowns: [{ ...spec.breakdowns[0]!, clock: 'calendar' as const }] }
  expect(runUseOf(calendar, layout)(runRow(layout, run)).operatingSeconds).toEqual([0])
})

test('a transfer of a loop operates as often as a product passes it', () => {
  const spec = stationLoop()
  const zones = spec.zones.map((zone, index) =>
    index === 6 ? { ...zone, transfer: { liftSeconds: 2, lowerSeconds: 1.5, enterOnlyIfExitClear: false } } : zone,
  )
  const lift = { ...spec.breakdowns[0]!, part: { kind: 'transfer' as const, index: 6 } }
  const line = { ...spec, zones, breakdowns: [lift] }
  const layout = rowLayout(line)
  const row = runRow(layout, simulate(line, { seed: '3', replication: 0 }))
  expect(runUseOf(line, layout)(row).operatingSeconds[0]).toBeCloseTo(3.5 * row[layout.units]!, 9)
})
