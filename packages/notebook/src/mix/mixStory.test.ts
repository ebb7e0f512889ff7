import { mixStudy, readOrders, readTable } from '@loopwright/measure'
import { expect, test } from 'vitest'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { mixStory } from './mixStory.ts'

const CSV = 'date,model,qty,coldKit\n2026-11-03,small,3,yes\n2026-11-03,large,1,no\n2026-11-04,small,6,no\n2026-11-04,small,none,no\n'
const table = readOrders(readTable(new TextEncoder().encode(CSV), 'orders.csv'))

test('the terminal and the page tell the same', () => {
  expect(toldTwice(mixStory([table], mixStudy(table.orders)).cells)).toEqual(TOLD_TWICE)
  expect(toldTwice(mixStory([table], mixStudy(table.orders, { work: { small: 50, large: 60 } }), true).cells)).toEqual(TOLD_TWICE)
})

test('shares, options, and the heaviest day', () => {
  const { answer } = mixStory([table], mixStudy(table.orders))
  for (const { value } of answer.figures!) expect(answer.sentences.join(' ')).toContain(value)
  expect(answer.sentences).toEqual([
    '10 units ordered: small 90\u202f%, large 10\u202f%; coldKit in 30\u202f%.',
    'The heaviest day begins 2026-11-04 00:00: 6 units against 5.0 in an average day.',
  ])
  expect(mixStory([], mixStudy(table.orders.map((one) => ({ ...one, when: null })))).worst).toBeNull()
})
