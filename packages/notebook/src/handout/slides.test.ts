import { expect, test } from 'vitest'
import { cells, chartCell } from '../../../../tests/helpers/pageCells.ts'
import type { Cell } from '../cells/cell.ts'
import { slidesOf } from './slides.ts'

const HEAD = { question: 'How many <carriers> & why?', scenarioName: 'Ring', date: new Date('2030-02-03T10:00:00Z') }
/** The parts are stored as they are, so that their text can be read. */
const textOf = async (all: readonly Cell[]): Promise<string> => Buffer.from(await slidesOf(HEAD, all)).toString('utf8')

test('four slides: answer, curve, losses, assumptions; figures have words for those who cannot see them', async () => {
  const losses: Cell = { ...chartCell, id: 'losses-causes' }
  const text = await textOf([...cells, losses])
  for (const [name, there] of [
    ['slide4.xml', true],
    ['slide5.xml', false],
  ] as const)
    expect(text.includes(`ppt/slides/${name}`), name).toBe(there)
  expect(text).toContain('How many &lt;carriers&gt; &amp; why?')
  expect(text.match(/descr="[^"]+"/g)!.filter((each) => each.includes('Alt') || each.length > 10).length).toBeGreaterThanOrEqual(2)
  expect(text).toContain('Assumptions')
  expect(text).toContain('2030-02-03')
})

test('what a study has not is said', async () => {
  const text = await textOf([{ kind: 'answer', id: 'answer', sentences: ['Ten are enough.'] }])
  expect(text).toContain('Ten are enough.')
  expect(text).toContain('This study has no curve')
  expect(text).toContain('This study has no figure of losses')
})

test('a list of a caution is read as its sentences, stops stand for losses, and the answer that leads is told', async () => {
  const text = await textOf([
    { kind: 'answer', id: 'first', sentences: ['Three were timed.'] },
    { kind: 'answer', id: 'promise', sentences: ['Ten are promised.'], lead: true },
    { ...chartCell, id: 'stops' },
    { kind: 'caution', id: 'left-out', tone: 'caution', title: 'Left out', markdown: '- No jams.\n- No scrap.' },
  ])
  expect(text).toContain('Left out: No jams. No scrap.')
  expect(text).toContain('Ten are promised.')
  expect(text).not.toContain('This study has no figure of losses')
})
