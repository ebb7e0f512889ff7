import { expect, test } from 'vitest'
import { drawingHtml } from './drawingHtml.ts'
import { chart } from '../../../../tests/helpers/pageCells.ts'

test('a drawing for wide screens and one for narrow ones', () => {
  const { picture } = chart('5')
  const html = picture.kind === 'drawing' ? drawingHtml(picture.drawing) : ''
  expect([...html.matchAll(/<div class="(\w+)"><svg[^>]* width="(\d+)"/g)].map((found) => found.slice(1))).toEqual([
    ['wide', '720'],
    ['narrow', '328'],
  ])
})
