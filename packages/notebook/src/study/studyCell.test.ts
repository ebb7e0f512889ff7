import type { Scenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { studyCell } from './studyCell.ts'

test('what was simulated, with the hash of the complete line', () => {
  const scenario = { line: { a: 1 } } as unknown as Scenario
  const cell = studyCell('compare', scenario, 'line.yaml', { seed: 's', replications: 5, engineVersion: '1', partial: true }, '2 lines')
  expect(cell.sentence).toBe('2 lines: 5 replications each, seed s.')
  // sha256sum of {"a":1}
  expect(cell.provenance).toEqual({
    scenarioFile: 'line.yaml',
    scenarioHash: '015abd7f5cc5',
    seed: 's',
    replications: 5,
    engineVersion: '1',
    partial: true,
  })
})
