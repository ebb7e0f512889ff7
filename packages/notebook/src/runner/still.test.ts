import { expect, test } from 'vitest'
import { cells, ownCell } from '../../../../tests/helpers/pageCells.ts'
import { stillPictures } from './still.ts'

test('one drawing for each chart of one’s own; all others stand in the page', async () => {
  expect(await stillPictures(cells)).toEqual(new Map())
  const stills = await stillPictures([...cells, ownCell])
  expect([...stills.keys()]).toEqual(['own'])
  const svg = stills.get('own')!
  expect(svg).toMatch(/^<svg/)
  expect(svg).not.toMatch(/\d\.\d{3}/)
})
