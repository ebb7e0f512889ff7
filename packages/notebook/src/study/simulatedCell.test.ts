import type { Scenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { simulatedCell } from './simulatedCell.ts'

test('what was simulated, with the hash of the complete line', () => {
  const scenario = {
    calendar: null,
    plan: null,
    line: { a: 1, zones: [], paths: [{ from: -1, to: 0 }], window: { warmupSeconds: 0, endSeconds: 60 } },
  } as unknown as Scenario
  const cell = simulatedCell('compare', scenario, 'line.yaml', { seed: 's', replications: 5, engineVersion: '1', partial: true }, '2 lines')
  expect(cell.sentence).toBe('2 lines: 5 windows of each, seed s (the same seed, the same numbers).')
  // sha256sum of {"a":1,"zones":[],"paths":[{"from":-1,"to":0}],"window":{"warmupSeconds":0,"endSeconds":60}}
  expect(cell.provenance).toEqual({
    scenarioFile: 'line.yaml',
    scenarioHash: '3cb4e600298e',
    seed: 's',
    replications: 5,
    engineVersion: '1',
    partial: true,
  })
})
