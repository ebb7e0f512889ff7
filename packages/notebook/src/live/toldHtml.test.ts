import { expect, test } from 'vitest'
import { NASTY, table } from '../../../../tests/helpers/pageCells.ts'
import { keptHtml, refusedHtml, toldHtml } from './toldHtml.ts'

const told = {
  kind: 'told' as const,
  id: 1,
  last: true,
  replications: 20,
  simulated: '20 shifts',
  carriers: 12,
  figures: [{ label: 'Units a shift', value: '340', sure: '± 1 on average', was: '331', more: '+9 ± 1' }],
  sentences: [NASTY],
  warnings: [{ title: 'Gridlock', text: `- ${NASTY}\n\nSuch a shift counts.` }],
  table: table('1'),
  sure: ['Every line met the same shifts.'],
  changes: [[`Carriers: 12 → ${NASTY}`]],
  command: `loopwright compare '${NASTY}'`,
  lines: [],
}

test('a changed figure is marked, in words too, with the value of the file and how much more', () => {
  const html = toldHtml(told, true)
  expect(html).toMatch(/class="changed"><dt>Units a shift<\/dt><dd><span class="value">340<span class="hidden">, changed/)
  expect(html).toContain('file: 331')
  expect(html).toContain('+9 ± 1')
})

test('as long as nothing is set the figures of the file stand alone', () => {
  const html = toldHtml({ ...told, changes: [[]], figures: [{ ...told.figures[0]!, was: '', more: '' }] }, false)
  expect(html).not.toContain('file:')
  expect(html).not.toContain('<table')
})

test('no text of a scenario becomes an element', () => {
  const kept = { kind: 'kept' as const, words: [NASTY], yaml: NASTY, file: NASTY, fileName: NASTY, command: NASTY }
  for (const html of [toldHtml(told, true), keptHtml(kept), refusedHtml(NASTY)]) expect(html).not.toContain('<b>')
})
