import { expect, test } from 'vitest'
import { cells } from '../../../../tests/helpers/pageCells.ts'
import { stillPictures } from './still.ts'

test('one drawing for each chart, of the view that is shown first; plans draw themselves', async () => {
  const stills = await stillPictures(cells)
  expect([...stills.keys()]).toEqual(['stations'])
  const svg = stills.get('stations')!
  expect(svg).toMatch(/^<svg/)
  expect(svg).toContain('S1')
  expect(svg).not.toMatch(/\d\.\d{3}/)
})
