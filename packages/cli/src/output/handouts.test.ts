import { expect, test } from 'vitest'
import { cells } from '../../../../tests/helpers/pageCells.ts'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { checkHandouts, wantsHandouts, writeHandouts } from './handouts.ts'

test('figures by the names of their cells, slides as one file', async () => {
  const shell = memoryShell()
  const flags = { svg: 'svg', png: 'png', pptx: 'four.pptx' }
  await writeHandouts(shell, flags, { question: 'How many?', scenarioName: 'Ring', cells, page: async () => '' })
  const figures = cells.flatMap(({ kind, id }) => (kind === 'chart' || kind === 'plan' ? [id] : []))
  expect([...shell.files.keys()]).toEqual([...figures.map((id) => `svg/${id}.svg`), ...figures.map((id) => `png/${id}.png`), 'four.pptx'])
  expect(shell.files.get('four.pptx')!.startsWith('PK')).toBe(true)
  expect(shell.said.err).toContain(`${figures.length} figures in svg`)
})

test('all of it is tried before anything is run', async () => {
  const shell = memoryShell()
  await expect(checkHandouts(shell, { pdf: 'page.pdf' })).rejects.toThrow('--pdf: nothing here prints')
  await expect(checkHandouts(shell, { png: 'closed' })).rejects.toThrow('cannot be written')
  await checkHandouts(shell, { svg: 'a', png: 'b', pptx: 'c.pptx' })
  expect([wantsHandouts({}), wantsHandouts({ pptx: 'c.pptx' })]).toEqual([false, true])
})
