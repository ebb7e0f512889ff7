import { beforeAll, expect, test } from 'vitest'
import { decisionRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { type DecisionRuns, paybackOf } from './decisionRuns.ts'
import { inputsTable, moneyTable, naiveTable, worthTable } from './paybackTables.ts'

let runs: DecisionRuns
beforeAll(async () => {
  runs = await decisionRuns(4)
})

test('files hold the numbers behind the texts, in full precision', () => {
  const result = paybackOf(runs)
  const { columns, rows } = moneyTable(result, '€')
  const at = columns.flatMap(({ fields }) => fields.map(({ name }) => name))
  result.alternatives.forEach(({ savings, worth }, index) => {
    expect(rows[index]!.values[at.indexOf('annual')]).toBe(savings.annual)
    expect(rows[index]!.values[at.indexOf('payback_months')]).toBe(worth.paybackMonths)
  })
  const worths = worthTable(result, '€')
  const fields = worths.columns.flatMap(({ fields }) => fields.map(({ name }) => name))
  result.alternatives.forEach(({ worth, spread }, index) => {
    expect(worths.rows[index]!.values[fields.indexOf('npv')]).toBe(worth.netPresentValue)
    expect(worths.rows[index]!.values[fields.indexOf('irr')]).toBe(worth.internalReturn.rate)
    expect(worths.rows[index]!.values[fields.indexOf('irr_p10')]).toBe(spread.internalReturn?.p10 ?? null)
  })
})

test('the envelope says that it holds only at the constraint', () => {
  const { note, rows } = naiveTable(paybackOf(runs), '€')
  expect(rows).toHaveLength(3)
  expect(note).toContain('4 s a unit × 800 units are about 53 min a shift, which holds only at the constraint')
  expect(note).toContain('common practice, no source'.replace('c', 'C'))
})

test('what money is reckoned with, the hurdle with where it comes from', () => {
  const inputs = Object.fromEntries(inputsTable(runs, paybackOf(runs)).rows.map(({ cells }) => [cells[0], cells[1]]))
  expect(inputs.Wage).toBe('38.00 €/h')
  expect(inputs.Hurdle).toBe('24 months (two years: common practice, no source)')
  expect(inputs['“guided vehicles”']).toMatch(/^620.000 € ± 20.%, 31.000 € a year to run ± 10.%$/)
})
