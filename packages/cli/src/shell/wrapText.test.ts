import { expect, test } from 'vitest'
import { wrapText } from './wrapText.ts'

test('short lines stay as they are, blanks and all', () => expect(wrapText('a  b\n\n   c ', 8)).toBe('a  b\n\n   c '))
test('long lines are broken between words, with their indent', () => expect(wrapText('  one two three', 9)).toBe('  one two\n  three'))
test('a word longer than a line stands alone', () => expect(wrapText('a abcdefghij b', 6)).toBe('a\nabcdefghij\nb'))
