/** A share of what `npm run fuzz` tries for an hour: the same numbers each time. */
import { expect, test } from 'vitest'
import { mutated, wholeOf } from './mutated.ts'
import { READERS } from './readers.ts'
import { textOf, tried } from './tried.ts'

const SHARES: Readonly<Record<string, number>> = {
  scenario: 120,
  'table beside a scenario': 40,
  'what is told of a scenario': 25,
  'decision file': 120,
  'what is told of a decision': 20,
  'command line': 120,
  'table of times': 80,
  'stop log': 60,
  'table of orders': 60,
  'table of weeks': 60,
  'table of stations': 60,
  'table of tasks': 60,
  workbook: 100,
  'file of the store': 60,
  'content of the store': 60,
  'store put together': 20,
  'address of a page': 20,
  'request to the server': 20,
  'job of a queue': 500,
  'line of a queue': 100,
  'failure of a queue': 60,
  'address of a queue': 60,
}

test('every reader has its share', () => expect(Object.keys(SHARES)).toEqual(Object.keys(READERS)))

test.each(Object.entries(SHARES))('%s: %i spoilt texts', async (reader, share) => {
  for (let number = 1; number <= share; number++) expect(await tried(reader, number)).toBeNull()
})

test('a text is made from its number, and is hardly ever left as it was', () => {
  expect(textOf('scenario', 7)).toBe(textOf('scenario', 7))
  const text = 'zones: { count: 10 }\n'
  const same = Array.from({ length: 200 }, (_, number) => mutated(text, [text], wholeOf(number))).filter((told) => told === text)
  expect(same.length).toBeLessThan(40)
})
