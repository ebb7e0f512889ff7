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
