import { expect, test } from 'vitest'
import { type Cell, sectionCell } from '../cells/cell.ts'
import { cells } from '../../../../tests/helpers/pageCells.ts'
import { handoutHtml, runningStyle } from './handoutHtml.ts'

const told: readonly Cell[] = [
  ...cells,
  sectionCell('inputs', 'Inputs', '22 zones; <12> carriers.'),
  { kind: 'caution', id: 'c', tone: 'caution', title: 'C', markdown: 'Long.', brief: 'Screening only.' },
]

test('inputs, what was simulated, the command and the cautions in brief; a screen reader has them elsewhere', () => {
  const html = handoutHtml({ command: 'loopwright sweep a.yaml' }, told)
  for (const part of ['22 zones; &lt;12&gt; carriers.', 'hash abc', 'Repeat with loopwright sweep a.yaml', 'Screening only.'])
    expect(html).toContain(part)
  expect(html.startsWith('<div class="handout" aria-hidden="true">')).toBe(true)
  expect(handoutHtml({ command: '' }, [])).toBe('')
})

test('no question can leave the running title', () => {
  const style = runningStyle({ question: 'How many "}</style><b>\\' })
  expect(style).not.toMatch(/<|"}/)
  expect(style).toContain('content:"How many \\22 \\7d ')
})
