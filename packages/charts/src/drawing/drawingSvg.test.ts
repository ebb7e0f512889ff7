import { describe, expect, test } from 'vitest'
import type { Drawing, Mark } from './drawing.ts'
import { drawingSvg } from './drawingSvg.ts'

const drawing = (...marks: Mark[]): Drawing => ({
  heightPixels: 100,
  across: { from: 0, to: 10, title: 'Zones', ticks: [] },
  up: { from: 0, to: 1, title: '', ticks: [] },
  rightPixels: 0,
  marks,
})
const svgOf = (...marks: Mark[]): string => drawingSvg(drawing(...marks), { widthPixels: 300 })

test('a picture is as wide as it is asked to be, and as high at every width', () => {
  const high = [300, 700].map((widthPixels) => /width="(\d+)" height="(\d+)"/.exec(drawingSvg(drawing(), { widthPixels }))!.slice(1))
  expect(high).toEqual([
    ['300', '126'],
    ['700', '126'],
  ])
  expect(() => drawingSvg(drawing(), { widthPixels: 100 })).toThrow('give 200 or more')
})

test('marks of one ink that follow each other are painted together; no text of a user is obeyed', () => {
  const dot: Mark = { mark: 'dot', x: 5, y: 0.5, ink: 'dot', tip: '<b>"A&B"' }
  const svg = svgOf(dot, dot)
  expect(svg.match(/<g [^>]*fill="var\(--lw-ink\)" stroke/g)).toHaveLength(1)
  expect(svg).toContain('data-tip="&lt;b&gt;&quot;A&amp;B&quot;"')
  expect(svg).toContain('cx="150" cy="54"')
})

test('a chart stands alone in every look but that of a page, on paper of its own', () => {
  const mark: Mark = { mark: 'rule', x: ['from', 'to'], y: [0.5, 0.5], ink: 'plan' }
  expect(drawingSvg(drawing(mark), { widthPixels: 300, look: 'dark' })).toContain('<rect width="300" height="126" fill="#17181b"/>')
  expect(svgOf(mark)).not.toContain('<rect')
})

test('words have a rim of the look’s paper, and on a hatched state the plate', () => {
  const words: Mark = { mark: 'words', x: 5, y: 0.5, text: 'plan', ink: 'words', rim: 'paper' }
  const state: Mark = { mark: 'area', x: [0, 10], y: [0, 1], ink: 'state 0', words: ['working'], wordsInk: 'on state 0' }
  const of = (look: 'page' | 'dark' | 'print'): string => drawingSvg(drawing(words, state), { widthPixels: 300, look })
  expect(of('dark')).toMatch(/<g[^>]* stroke="#17181b"[^>]*paint-order="stroke"><text[^>]*>plan</)
  expect(of('page')).toMatch(/<g[^>]* stroke="var\(--lw-plate\)"[^>]*><text[^>]*>working</)
  expect(of('print')).toMatch(/<g[^>]* stroke="#ffffff"[^>]*><text[^>]*>working</)
})

test('print carries the hatchings that it refers to', () => {
  const state: Mark = { mark: 'area', x: [0, 10], y: [0, 1], ink: 'state 3' }
  const svg = drawingSvg(drawing(state), { widthPixels: 300, look: 'print' })
  expect(svg).toContain('fill="url(#lw-hatch-3)"')
  expect(svg).toContain('<pattern id="lw-hatch-3"')
  expect(drawingSvg(drawing(state), { widthPixels: 300, look: 'light' })).not.toContain('<pattern')
})

test('the name of a choice cannot leave its attribute', () => {
  expect(drawingSvg({ ...drawing(), choice: 'a" onload="b' }, { widthPixels: 300 })).toContain('data-choice="a&quot; onload=&quot;b"')
})

describe('what lies outside the area is cut off', () => {
  test('of a line only the pieces inside are drawn', () => {
    const svg = svgOf({
      mark: 'path',
      points: [
        [-5, 0.5],
        [5, 0.5],
        [5, 2],
        [8, 2],
        [8, 0],
      ],
      ink: 'line',
    })
    expect(svg).toContain('d="M0 54L150 54L150 4M240 4L240 104"')
  })
  test('an area ends at the edge, and one outside is none', () => {
    expect(svgOf({ mark: 'area', x: [8, 20], y: [0, 0.5], ink: 'bar' })).toContain('x="240" y="54" width="60" height="50"')
    expect(svgOf({ mark: 'area', x: [11, 20], y: [0, 0.5], ink: 'bar' })).not.toContain('<rect')
  })
})

describe('words', () => {
  test('the longest that fits stands in an area, or none', () => {
    const area = (to: number): Mark => ({ mark: 'area', x: [0, to], y: [0, 1], ink: 'bar', words: ['working', 'W'] })
    expect([10, 1, 0.2].map((to) => />([^<]+)<\/text>/.exec(svgOf(area(to)).replace('Zones', ''))?.[1] ?? null)).toEqual([
      'working',
      'W',
      null,
    ])
  })
  test('a long name makes room for what stands beside it, and says all of itself when pointed at', () => {
    const name = 'Pre-assembly of the refrigerant pipes and brazing'
    const svg = svgOf({ mark: 'words', x: 'from', y: 0.5, text: name, ink: 'words', beside: '12 min, 3 stops' })
    expect(svg).toMatch(new RegExp(`data-tip="${name}">Pre-assembly of[^<]*…</text>`))
  })
})
