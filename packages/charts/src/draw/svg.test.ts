import { expect, test } from 'vitest'
import { colour, escapeXml, points, px, shade, textAt } from './svg.ts'

test('no name can end a tag or an attribute', () => {
  expect(escapeXml(`<b a="1">&'`)).toBe("&lt;b a=&quot;1&quot;&gt;&amp;'")
  expect(textAt('<x>', 0, 0, { size: 12 })).toContain('&lt;x&gt;')
})

test('pixels have one decimal, and zero has no sign', () => {
  expect([1 / 3, -0.01, 12.05, 1e3].map(px)).toEqual(['0.3', '0', '12.1', '1000'])
  expect(
    points([
      { x: 1 / 3, y: 2 },
      { x: 0, y: 0 },
    ]),
  ).toBe('0.3,2 0,0')
})

test('shades run over the whole ramp and stay on it', () => {
  expect([-1, 0, 0.5, 1, 7].map((value) => shade(value).ground.replace(/,.*/, ''))).toEqual([
    'var(--lw-ramp-0',
    'var(--lw-ramp-0',
    'var(--lw-ramp-4',
    'var(--lw-ramp-8',
    'var(--lw-ramp-8',
  ])
})

test('a colour has a fall-back for a drawing that stands alone', () => expect(colour('ink')).toBe('var(--lw-ink, #1b1b1f)'))

test('only what differs from the default is written', () => {
  expect(textAt('a', 1, 2, { size: 13, anchor: 'end', bold: true, fill: 'red' })).toBe(
    '<text x="1" y="2" font-size="13" text-anchor="end" font-weight="600" fill="red">a</text>',
  )
})
