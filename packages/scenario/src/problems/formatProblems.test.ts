import { expect, test } from 'vitest'
import { formatProblems } from './formatProblems.ts'
import type { Problem } from './problems.ts'

const problem: Problem = {
  code: 'E_UNKNOWN_ZONE',
  severity: 'error',
  path: 'stations.S2.zone',
  line: 2,
  column: 9,
  length: 4,
  message: 'there is no zone called "Z-O7"',
  fix: 'did you mean "Z-07"?',
}

test('place, what was found, the line with a caret, the remedy, the count', () => {
  expect(formatProblems([problem], 'S2:\n  zone: Z-O7\n', 'corner.yaml')).toBe(
    [
      'corner.yaml:2:9  E_UNKNOWN_ZONE  stations.S2.zone',
      '  there is no zone called "Z-O7"',
      '      2 |   zone: Z-O7',
      '        |         ^^^^',
      '  did you mean "Z-07"?',
      '1 problem found; nothing was run.',
    ].join('\n'),
  )
})

test('a long line is cut around the place and stays within 80 columns', () => {
  const line = `${'x'.repeat(200)}HERE${'y'.repeat(200)}`
  const text = formatProblems([{ ...problem, line: 1, column: 201 }], line, 'f')
  const [, , shown = '', caret = ''] = text.split('\n')
  expect(shown.slice(caret.indexOf('^'), caret.lastIndexOf('^') + 1)).toBe('HERE')
  expect(Math.max(...text.split('\n').map((one) => one.length))).toBeLessThanOrEqual(80)
})

test('long sentences are wrapped, and a number stays with its unit', () => {
  const message = 'a carrier is 1.2 m long in travel and does not fit zone "Z02" and 9 more of 1 m'
  expect(formatProblems([{ ...problem, message }], '', 'f').split('\n')[2]).toBe('  1 m')
})

test('the last line counts errors and warnings apart', () => {
  const warning: Problem = { ...problem, severity: 'warning' }
  const last = (...problems: Problem[]) => formatProblems(problems, '', 'f').split('\n').at(-1)
  expect(last(problem, problem)).toBe('2 problems found; nothing was run.')
  expect(last(problem, warning)).toBe('1 problem and 1 warning found; nothing was run.')
  expect(last(warning, warning)).toBe('2 warnings found.')
  expect(formatProblems([], '', 'f')).toBe('')
})
