import { beforeAll, expect, test } from 'vitest'
import { decisionRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { alternativesTable, assumptionsTable } from './alternativeTables.ts'
import type { DecisionRuns } from './decisionRuns.ts'

let runs: DecisionRuns
beforeAll(async () => {
  runs = await decisionRuns(3)
})

test('a row for each alternative, today marked, with what was simulated of it', () => {
  const { rows, columns } = alternativesTable(runs)
  expect(rows.map(({ cells }) => cells[0])).toEqual(runs.decision.alternatives.map(({ name }) => name))
  expect(rows.map(({ marked }) => marked)).toEqual([true, false, false, false])
  const fields = columns.flatMap(({ fields }) => fields.map(({ name }) => name))
  expect(rows[0]!.values[fields.indexOf('units_mean')]).toBe(runs.result.comparison.lines[0]!.mean!.mean)
  expect(rows[0]!.values[fields.indexOf('floor_m2')]).toBe(190)
  expect(rows[2]!.values[fields.indexOf('handlings')]).toBe(0)
})

test('what is not known has no number', () => {
  const unknown = {
    ...runs,
    decision: {
      ...runs.decision,
      alternatives: runs.decision.alternatives.map((one) => ({ ...one, floor: null, metresPerHandling: null })),
    },
  }
  const [today] = alternativesTable(unknown).rows
  expect(today!.cells.slice(-2)).toEqual(['–', '–'])
})

test('each says where its line is written, and what it takes for granted', () => {
  const cells = assumptionsTable(runs).rows.map((row) => row.cells)
  expect(cells[0]).toEqual(['push line', 'push-line.yaml', expect.stringContaining('20.6 s')])
  expect(cells[1]![1]).toContain('drive.release = train')
  expect(cells[2]![1]).toBe('../outdoor-unit-base-line.yaml')
})
