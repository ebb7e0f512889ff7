import { expect, test } from 'vitest'
import { terminalText } from './terminal.ts'

test('controls and standing cautions belong to the page, warnings to both', () => {
  expect(terminalText({ kind: 'choice', id: 'c', legend: 'Carriers', options: [{ key: '5', label: '5' }], shown: '5' })).toBe('')
  expect(terminalText({ kind: 'caution', id: 'c', title: 'Use', markdown: 'x', tone: 'caution' })).toBe('')
  expect(terminalText({ kind: 'caution', id: 'w', title: 'Gridlock', markdown: 'at **18** carriers', tone: 'warning' })).toBe(
    'Gridlock:\nat 18 carriers',
  )
})

const ESC = String.fromCodePoint(0x1b)

test('the answer, warnings and what they are about have a colour where colours may be used', () => {
  const answer = { kind: 'answer', id: 'a', sentences: ['Yes.', 'It is.'] } as const
  expect(terminalText(answer)).toBe('Yes.\nIt is.')
  expect(terminalText(answer, { colour: true })).toBe(`${ESC}[1mYes.${ESC}[22m\nIt is.`)
  expect(terminalText({ ...answer, tone: 'bad' }, { colour: true })).toBe(`${ESC}[1;31mYes.${ESC}[22;39m\nIt is.`)
  expect(terminalText({ ...answer, tone: 'good' })).toBe('Yes.\nIt is.')
  const warning = { kind: 'caution', id: 'w', title: 'Gridlock', markdown: 'at 18', tone: 'warning' } as const
  expect(terminalText(warning, { colour: true })).toBe(`${ESC}[1;35mGridlock:${ESC}[22;39m\nat 18`)
})

test('text is as wide as it may be', () => {
  const sentences = ['word '.repeat(40).trim()]
  for (const columns of [60, 80, 120]) {
    const lines = terminalText({ kind: 'answer', id: 'a', sentences }, { columns }).split('\n')
    expect(Math.max(...lines.map((line) => line.length))).toBe(columns - 1)
    expect(terminalText({ kind: 'prose', id: 'p', markdown: sentences[0]! }, { columns })).toBe(lines.join('\n'))
  }
})

test('what a name says is shown and not carried out, and it makes no lines of its own', () => {
  const hostile = `a${ESC}[2J\n> done${String.fromCodePoint(0x9b)}1m`
  const seen = 'a\\u001b[2J > done\\u009b1m'
  expect(terminalText({ kind: 'answer', id: 'a', sentences: [hostile] })).toBe(seen)
  expect(terminalText({ kind: 'caution', id: 'w', title: hostile, markdown: hostile, tone: 'warning' })).not.toMatch(/(?!\n)\p{Cc}/u)
})
