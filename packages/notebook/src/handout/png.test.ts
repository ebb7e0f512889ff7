import { expect, test } from 'vitest'
import { pngOf } from './png.ts'

const svg = (inner: string): string => `<svg xmlns="http://www.w3.org/2000/svg" width="120" height="40">${inner}</svg>`
const TEXT = '<text x="4" y="24" font-family="system-ui, sans-serif">Units per shift</text>'

test('twice as many pixels as the drawing has, on white', async () => {
  const png = await pngOf(svg(''))
  // PNG specification, 5.2 and 11.2.1: signature, then width and height
  expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10])
  const view = new DataView(png.buffer, png.byteOffset)
  expect([view.getUint32(16), view.getUint32(20)]).toEqual([240, 80])
})

test('text is drawn, with a font that travels along', async () => {
  const [without, plain, bold] = await Promise.all(
    ['', TEXT, TEXT.replace('<text', '<text font-weight="bold"')].map((inner) => pngOf(svg(inner))),
  )
  expect(plain!.length).toBeGreaterThan(2 * without!.length)
  expect(Buffer.compare(plain!, bold!)).not.toBe(0)
})
