import { createSimulator } from '@loopwright/line'
import { controlVariate, shownControls } from '@loopwright/stats/worlds'
import { expect, test } from 'vitest'
import { rowLayout, runRow } from '../runs/runRow.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { lineControls } from './lineControls.ts'
import { runUseOf } from './runUse.ts'

const line = stationLoop()
const layout = rowLayout(line)
const ran = (seed: string, replications: number) => {
  const simulator = createSimulator(line)
  const rows = Array.from({ length: replications }, (_, replication) => runRow(layout, simulator.run({ seed, replication })))
  return { units: rows.map((row) => row[layout.units]!), uses: rows.map(runUseOf(line, layout)) }
}

test('stops and work tell most of what one hour makes more than another', () => {
  const { units, uses } = ran('2', 100)
  const [controls] = lineControls('2', [{ line, uses }])
  expect(controls!.map(({ name }) => name)).toEqual(['stops of stations', 'work'])
  expect(shownControls(units, controls!)!.worth).toBeGreaterThan(300)
  // of other worlds they tell nothing
  const [others] = lineControls('another', [{ line, uses }])
  expect(controlVariate(units, others!).varianceShare).toBeGreaterThan(0.8)
})

test('a study has the same controls whatever stands beside it, and none with one run', () => {
  const { uses } = ran('2', 12)
  const alone = lineControls('2', [{ line, uses }])[0]
  const beside = lineControls('2', [
    { line, uses: uses.slice(0, 1) },
    { line, uses: uses.slice(0, 7) },
    { line, uses },
  ])
  expect(beside[2]).toEqual(alone)
  expect(beside[0]).toEqual([])
  expect(beside[1]![0]!.values).toHaveLength(7)
})

test('a line without chance has none', () => {
  const fixed = stationLoop({ breakdowns: [], stations: line.stations.map((station) => ({ ...station, work: null })) })
  expect(lineControls('2', [{ line: fixed, uses: ran('2', 3).uses }])).toEqual([[]])
})
