import { expect, test } from 'vitest'
import { cells as some, ownCell } from '../../../../tests/helpers/pageCells.ts'
import { figureSvgs } from './figureSvgs.ts'

const cells = [...some, ownCell]

test('each figure once, as a drawing that stands alone and says what it shows', async () => {
  const figures = await figureSvgs(cells)
  expect(figures.map(({ id }) => id)).toEqual(cells.flatMap(({ kind, id }) => (kind === 'chart' || kind === 'plan' ? [id] : [])))
  expect(figures.length).toBeGreaterThan(2)
  for (const { svg, alt } of figures) {
    expect(svg).toMatch(/^<svg role="img" aria-label="/)
    expect(svg).toContain('xmlns="http://www.w3.org/2000/svg"')
    expect(svg.match(/role="img"/g)).toHaveLength(1)
    expect(svg).not.toContain('var(')
    expect(svg).not.toContain('<script')
    expect(alt).not.toBe('')
  }
})
