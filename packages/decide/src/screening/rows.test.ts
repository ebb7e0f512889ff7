import { expect, test } from 'vitest'
import { rows } from './rows.ts'
import { NOTHING_GIVEN } from './screening.ts'

test('a row is a finding; one without a limit is not checked, and one that is null is none', () => {
  const row = (limit: number | null) => ['a', 't', 'w', 2, 'm', 'at most', limit, 'by mechanics', 's', [], 'm'] as const
  const found = rows(NOTHING_GIVEN, [row(3), row(1), row(null), null])
  expect(found.map(({ word }) => word)).toEqual(['within guidance value', 'above guidance value', 'not checked'])
  expect(found[0]).toMatchObject({ id: 'a', value: 2, guidance: { value: 3, source: 's', edition: 'none', evidence: 'by mechanics' } })
})
