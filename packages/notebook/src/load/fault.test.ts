import { expect, test } from 'vitest'
import { type Fault, faultText, frameText, NotebookFaults } from './fault.ts'

const FAULT: Fault = {
  file: 'a.ts',
  line: 12,
  column: 5,
  length: 3,
  source: '    foo(1)',
  message: 'foo is unknown',
  fix: 'Did you mean "for"?',
}

test('place, finding, line with a caret, remedy', () =>
  expect(faultText(FAULT).split('\n')).toEqual([
    'a.ts:12:5',
    '  foo is unknown',
    '     12 |     foo(1)',
    '        |     ^^^',
    '  Did you mean "for"?',
  ]))

test('what is not known is left out', () => expect(faultText({ ...FAULT, source: '', fix: '' })).toBe('a.ts:12:5\n  foo is unknown'))

test('of a long line the part around the place', () => {
  const frame = frameText({ ...FAULT, column: 300, source: `${'x'.repeat(299)}foo${'y'.repeat(300)}` })
  const [line, caret] = frame.split('\n')
  expect(line!.slice(caret!.indexOf('^'), caret!.indexOf('^') + 3)).toBe('foo')
  expect(line!.length).toBeLessThan(120)
})

test('all findings are told at once', () =>
  expect(new NotebookFaults([FAULT, { ...FAULT, line: 13 }]).message).toMatch(/a\.ts:12:5[\s\S]*a\.ts:13:5/))
