import { expect, test } from 'vitest'
import { wrongWords } from './wrongWords.ts'

const said = (text: string, command = 'loopwright order line.yaml'): string => wrongWords(`${text}\n`, command, { columns: 80 }).trimEnd()

test('an old name of an option is told the new one, with or without its value', () => {
  expect(said("error: unknown option '--mine'\n(Did you mean --move?)")).toBe(
    '"order" has no option --mine; it is called --try now: an order to try as it is',
  )
  expect(said("error: unknown option '--mine=S5@Z14'")).toContain('it is called --try now')
})

test('any other keeps what was found and what would be right', () => {
  expect(said("error: unknown option '--lvel'\n(Did you mean --level?)")).toBe("unknown option '--lvel'\n(Did you mean --level?)")
  expect(said("error: option '--level <percent>' argument '0.95' is invalid. Confidence is in percent: write 95.")).toBe(
    '--level "0.95": Confidence is in percent: write 95.',
  )
  expect(said("error: option '-s, --seed <text>' argument 'a\nb' is invalid. Write one.")).toBe('--seed "a b": Write one.')
})

test('in the columns there are', () => {
  const long = wrongWords(`error: ${'word '.repeat(30)}\n`, 'loopwright', { columns: 60 })
  for (const line of long.split('\n')) expect(line.length).toBeLessThanOrEqual(60)
})
