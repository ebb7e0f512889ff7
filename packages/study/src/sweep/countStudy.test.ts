import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from '@loopwright/line'
import { law } from '@loopwright/line/bounds'
import { chanceVerdict, meanInterval, outputInterval } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { CountStudy } from './countStudy.ts'
import { replicate } from '../runs/replicate.ts'
import { rowLayout, runRow } from '../runs/runRow.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { total } from '../../../../tests/helpers/spent.ts'

const spec = stationLoop()
const layout = rowLayout(spec)
const runs = await replicate(spec, { replications: 12 }, { seed: '5', workers: 0 })
const rows = runs.map((run) => runRow(layout, run))
const mean = (of: (run: (typeof runs)[number]) => number): number => runs.reduce((sum, run) => sum + of(run), 0) / runs.length

describe('twelve replications', () => {
  const study = new CountStudy(3, layout)
  study.add(0, rows)
  const result = study.result(spec, law(spec), 150)

  test('units, their mean and its interval', () => {
    expect(result.units).toEqual(runs.map((run) => run.output))
    expect(result.mean!.mean).toBeCloseTo(
      mean((run) => run.output),
      10,
    )
    expect(study.relativeHalfWidth()).toBeCloseTo(meanInterval(result.units).halfWidth / result.mean!.mean, 12)
    expect(result.mean).toEqual(outputInterval(result.units))
    expect(result.planVerdict).toEqual(chanceVerdict(result.meetsPlan!.successes, 12))
    expect(result.moving).toBeNull()
    expect(result.meetsPlan!.successes).toBe(runs.filter((run) => run.output >= 150).length)
  })

  test('means of everything else, recomputed from the runs', () => {
    expect(result.lapSecondsMean).toBeCloseTo(
      mean((run) => run.lap.mean!),
      9,
    )
    expect(result.productsInLineMean).toBeCloseTo(
      mean((run) => run.productsInLineMean),
      10,
    )
    for (const [s, station] of result.stations.entries()) {
      expect(Object.keys(station.shares)).toEqual(STATION_STATES)
      for (const state of STATION_STATES)
        expect(station.shares[state]).toBeCloseTo(
          mean((run) => run.stations[s]!.seconds[state] / 3600),
          12,
        )
      expect(station.longestBlockSecondsMean).toBeCloseTo(
        mean((run) => run.stations[s]!.longestBlockSeconds),
        9,
      )
    }
    for (const [z, zone] of result.zones.entries()) {
      expect(Object.keys(zone.shares)).toEqual(ZONE_STATES)
      expect(zone.occupancyMean).toBeCloseTo(
        mean((run) => run.zones[z]!.occupancyMean),
        12,
      )
    }
    expect(result.zones.reduce((sum, zone) => sum + zone.occupancyMean, 0)).toBeCloseTo(3, 9)
    expect(Object.keys(result.carrierShares!)).toEqual(CARRIER_STATES)
    expect(total(result.carrierShares!)).toBeCloseTo(1, 12)
    const [jam, pause] = result.stoppedBy
    expect(jam).toMatchObject({ cause: 'jam' })
    expect(jam!.count).toBeCloseTo(
      mean((run) => run.breakdowns[0]!.count),
      12,
    )
    expect(pause).toEqual({ cause: 'break', seconds: 600, count: 1 })
    expect(result.outputByHour.reduce((sum, units) => sum + units, 0)).toBeCloseTo(result.mean!.mean, 10)
  })

  test('rows in any order give the same bits', () => {
    const mixed = new CountStudy(3, layout)
    for (const index of [3, 0, 11, 1, 2, 7, 5, 4, 6, 10, 8, 9]) mixed.add(index, [rows[index]!])
    expect(mixed.result(spec, law(spec), 150)).toEqual(result)
  })
})

test('one replication: what it tells, no interval', () => {
  const study = new CountStudy(3, layout)
  study.add(0, rows.slice(0, 1))
  expect(study.result(spec, law(spec), null)).toMatchObject({ replications: 1, mean: null, p10: null, singleShift: null, meetsPlan: null })
  expect(study.relativeHalfWidth()).toBeNull()
})

test('runs that stood still, and what the others made by themselves', () => {
  const study = new CountStudy(3, layout)
  study.add(
    0,
    rows.map((row, replication) => {
      const still = row.slice()
      if (replication % 3 === 0) still.set([0, 1])
      return still
    }),
  )
  const { gridlocks, moving } = study.result(spec, law(spec), 150)
  const moved = runs.filter((_, replication) => replication % 3 !== 0).map((run) => run.output)
  expect(gridlocks).toBe(4)
  expect(moving).toEqual({ replications: 8, mean: outputInterval(moved), low: Math.min(...moved), high: Math.max(...moved) })
})

test('all stood still: nothing made by others', () => {
  const study = new CountStudy(3, layout)
  study.add(0, [new Float64Array(layout.length).fill(0, 0).with(1, 1)])
  expect(study.result(spec, law(spec), 150).moving).toEqual({ replications: 0, mean: null, low: null, high: null })
})

test('none: nothing but the law', () => {
  const result = new CountStudy(3, layout).result(spec, law(spec), 150)
  expect(result).toMatchObject({
    replications: 0,
    units: [],
    mean: null,
    meetsPlan: null,
    stations: [],
    zones: [],
    stoppedBy: [],
    lapSecondsMean: null,
  })
  expect(result.law!.carrierLimited).toBeGreaterThan(0)
})
