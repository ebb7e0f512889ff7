import { expect, test } from 'vitest'
import { mapExample } from '../examples/plan.ts'
import { lineMap } from './lineMap.ts'
import type { PlanZone } from '../plan/planZone.ts'

const zone = (name: string): PlanZone => ({ name, lengthMetres: 1, turn: null, transfer: false, station: null, value: null, label: null })

test('every zone is drawn once, every path has an arrow', () => {
  const { svg, description, toScale } = mapExample()
  expect(svg.match(/<rect [^>]*height="26"/g)).toHaveLength(11)
  expect(svg.match(/<polygon /g)).toHaveLength(15)
  expect(svg.match(/stroke-dasharray/g)).toHaveLength(1)
  expect(toScale).toBe(false)
  expect(description).toContain('Several ways out: Z04, Z07, Z11.')
  expect(description).toContain('Several ways in: Z01, Z03, Z07.')
})

test('it stays inside a narrow screen', () => {
  const { svg } = mapExample(328)
  const rects = [...svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)" height="26"/g)].map(
    ([, x, width]) => Number(x) + Number(width),
  )
  expect(Math.max(...rects)).toBeLessThanOrEqual(328)
})

test('what cannot be drawn is said', () => {
  expect(() => lineMap([], [])).toThrow('a map needs at least one zone')
  expect(() => lineMap([zone('A')], [{ from: 0, to: 4 }])).toThrow('a path leads from zone 0 to 4, but there are 1')
  expect(() => lineMap([zone('A')], [], { widthPixels: 20 })).toThrow('cannot be read')
})

const station = (key: string, title: string): PlanZone => ({ ...zone(key), station: { key: `S-${key}`, title, duties: [] } })

test('a long name is broken, not cut', () => {
  const { svg } = lineMap(
    [station('A', 'Tightness test'), station('B', 'Packing')],
    [
      { from: 0, to: 1 },
      { from: 0, to: 1 },
    ],
    { widthPixels: 200 },
  )
  expect(svg).not.toContain('…')
})

test('the way of the rejected is named, wherever it leads', () => {
  const zones = ['A', 'B', 'C', 'D'].map(zone)
  const on = [0, 1, 2].map((from) => ({ from, to: from + 1 }))
  for (const to of [-1, 0, 2, 3]) expect(lineMap(zones, [...on, { from: 1, to, takes: 'rejected' }]).svg).toContain('>rejected</text>')
})

test('carriers at an instant: plates, and words', () => {
  const { svg, description } = lineMap([{ ...zone('A'), carrier: '2' }, zone('B')], [{ from: 0, to: 1 }])
  expect(svg).toContain('data-carrier="2"')
  expect(description).toContain('Carriers: 2 in A.')
})
