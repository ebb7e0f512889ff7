import { expect, test } from 'vitest'
import { textTable } from '../table/textTable.ts'
import { readTimes } from './readTimes.ts'

const read = (text: string, columns: Record<string, string> = {}) => readTimes(textTable(text, 't.csv'), { columns })

test('a column of units holds for the times of its row, and tells no variants', () => {
  const { observations, said, doubts, account } = read('task,unit,1,2\nwire,s,45,47\nseal,min,0.5,0.75\nfit,,30,31\n')
  expect(observations.map(({ task, variant, observedSeconds }) => [task, variant, observedSeconds])).toEqual([
    ['wire', null, 45],
    ['wire', null, 47],
    ['seal', null, 30],
    ['seal', null, 45],
  ])
  expect(said).toContain('the unit of each row stands under "unit"')
  expect(doubts).toEqual([])
  expect(account.refusals.map(({ reason }) => reason)).toContain('"30" has no unit')
})

test('other words under "unit" are variants, also where the user says so', () => {
  expect(read('task,unit,seconds\nwire,small,45\nwire,large,47\n').observations.map(({ variant }) => variant)).toEqual(['small', 'large'])
  expect(read('task,unit,seconds\nwire,s,45\n', { variant: 'unit' }).observations[0]!.variant).toBe('s')
})

test('what 0:45 is taken for, and units that differ by column, are said', () => {
  expect(read('cycle,wire,seal (min)\n1,0:45,0.5\n2,0:47,0.6\n').said).toEqual(
    expect.arrayContaining(['times such as 0:45 are minutes and seconds', 'bare numbers under "seal (min)" are minutes']),
  )
})
