import { createSimulator } from '@loopwright/line'
import { outputInterval } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { rowLayout, runRow } from '../runs/runRow.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { tooOften } from '../../../../tests/helpers/tooOften.ts'
import { controlledMeans } from './controlledMeans.ts'
import { runUseOf } from './runUse.ts'

const line = stationLoop()
const layout = rowLayout(line)
const useOf = runUseOf(line, layout)
const simulator = createSimulator(line)
const rows = Array.from({ length: 200 }, (_, replication) => runRow(layout, simulator.run({ seed: '6', replication })))
const units = rows.map((row) => row[layout.units]!)
const study = { carriers: line.carriers.count, units, uses: rows.map(useOf), gridlocks: 0 }

test('the mean of the line is known better by as many runs', () => {
  const [found] = controlledMeans(line, '6', [study])
  const plain = outputInterval(units)
  expect(found!.halfWidth).toBeLessThan(0.7 * plain.halfWidth)
  expect(Math.abs(found!.mean - plain.mean)).toBeLessThan(2 * plain.halfWidth)
})

test('it holds its word: 95 % intervals of studies of 50 runs cover the mean of 3,000; half as wide they do not', {
  tags: 'long',
}, async () => {
  const all = Array.from({ length: 3000 }, (_, replication) => runRow(layout, simulator.run({ seed: 'cover', replication })))
  const whole = { ...study, units: all.map((row) => row[layout.units]!), uses: all.map(useOf) }
  const truth = controlledMeans(line, 'cover', [whole])[0]!.mean
  /** by study: how far from the truth, in half-widths */
  const off: number[] = []
  const missesBy = (halfWidths: number) => async (k: number) => {
    off[k] ??= offOf(k)
    return off[k] > halfWidths
  }
  const offOf = (k: number): number => {
    const runs = Array.from({ length: 50 }, (_, replication) => runRow(layout, simulator.run({ seed: `cover ${k}`, replication })))
    const part = { ...study, units: runs.map((row) => row[layout.units]!), uses: runs.map(useOf) }
    const { mean, halfWidth } = controlledMeans(line, `cover ${k}`, [part])[0] ?? outputInterval(part.units)
    return Math.abs(mean - truth) / halfWidth
  }
  const rates = { promised: 0.05, found: 0.2, falseAlarm: 1e-4, missed: 0.01 }
  expect(await tooOften(missesBy(1), rates)).toBe(false)
  expect(await tooOften(missesBy(0.5), rates)).toBe(true)
})

test('plain with few runs, where runs stood still, and where all are the same', () => {
  const few = { ...study, units: units.slice(0, 29), uses: study.uses.slice(0, 29) }
  expect(controlledMeans(line, '6', [few, { ...study, gridlocks: 1 }, { ...study, units: units.map(() => 5) }])).toEqual([null, null, null])
})
