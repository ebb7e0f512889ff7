import { drivers as figure } from '@loopwright/charts'
import type { DriverResult } from '@loopwright/study'
import { expect, test } from 'vitest'
import { driverSentences, driverTable, explanationSentences } from './driverWords.ts'

const elasticity = (mean: number) =>
  ({ n: 30, mean, sd: 0.1, level: 0.95, halfWidth: 0.04, low: mean - 0.04, high: mean + 0.04, status: 'ok' }) as const
const effect = (name: string, mean: number, station: number | null = null) =>
  ({ kind: 'task', name, station, lessIsBetter: true, elasticity: elasticity(mean), unitsOfStep: mean * 16 }) as const
const same = {
  n: 30,
  mean: 0,
  sd: 0,
  level: 0.95,
  halfWidth: 0,
  low: 0,
  high: 0,
  pairingGain: null,
  status: 'identical in every replication',
} as const
const result = (candidate: number, drivers = [effect('S2 Fit', 0.5, 1), effect('S1 Load', 0.1, 0)]): DriverResult => ({
  kind: 'drivers',
  engineVersion: '0',
  seed: '1',
  replications: 30,
  partial: false,
  step: 0.05,
  carriers: 4,
  base: null,
  drivers,
  limits: [0],
  oneCarrierMore: same,
  oneCarrierLess: { ...same, mean: -3, sd: 1, halfWidth: 0.4, low: -3.4, high: -2.6, status: 'difference shown' },
  explanation: {
    stations: [
      { station: 0, blockedShare: 0.3, starvedShare: 0 },
      { station: 1, blockedShare: 0, starvedShare: 0.02 },
    ],
    arrows: { arrows: [[0, 1]], candidates: [] },
    candidate,
  },
  law: { constraintStation: 1 } as never,
  lawTerms: { regime: 'station-limited' } as never,
})
const line = { stations: ['S1', 'S2'].map((name) => ({ name, title: name })) } as never

test('what limits, and what a carrier more or less does', () => {
  expect(driverSentences(result(1), 'shift')).toEqual([
    figure(result(1)).finding,
    'One carrier more than 4 changes nothing, one less costs 3.0 ± 0.4 units a shift.',
  ])
})

test('where arrows and runs agree it is said; where not, the runs are to be trusted, and why', () => {
  expect(explanationSentences(result(1), line).join(' ')).toContain('Both say the same.')
  expect(explanationSentences(result(0), line).join(' ')).toContain('The two disagree: the runs say S2 Fit. Trust the runs')
  expect(explanationSentences(result(0, [effect('moves', 0.5)]), line).join(' ')).toContain('moves is no station')
})

test('the table of the terminal is cut, and says so', () => {
  const many = Array.from({ length: 15 }, (_, index) => effect(`S${index}`, 0.5 - index / 100))
  const table = driverTable(result(1, many), 'shift')
  expect(table.rows.length).toBe(12)
  expect(table.note).toContain('3 smaller ones are left out here.')
})
