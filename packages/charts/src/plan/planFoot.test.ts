import { expect, test } from 'vitest'
import { baseLinePlan } from '../examples/baseLine.ts'
import { planFoot } from './planFoot.ts'

const zones = baseLinePlan(10)
const foot = { width: 360, from: 100, scale: 46 / 1.5, meaning: 'share of the shift', labels: true, note: null }

test('the bar of metres is as long as it says', () => {
  const { svg } = planFoot(zones, foot)
  const long = Number(/h([\d.]+)v-8/.exec(svg)![1])
  const metres = Number(/>([\d.]+) m</.exec(svg)![1])
  expect(long / metres).toBeCloseTo(foot.scale, 1)
  expect(long).toBeGreaterThanOrEqual(60)
  expect(long).toBeLessThanOrEqual(150)
})

test('shades are explained where there are any, crosses too', () => {
  expect(planFoot(zones, foot).svg).toContain('Shade, and number in the cell:')
  expect(planFoot(zones, foot).svg).toContain('crossed: transfer')
  const bare = planFoot(
    zones.map((zone) => ({ ...zone, value: null, transfer: false })),
    foot,
  ).svg
  expect(bare).not.toContain('Shade')
  expect(bare).not.toContain('crossed')
})

test('a note takes lines of its own', () => {
  const without = planFoot(zones, foot)
  const withNote = planFoot(zones, { ...foot, note: 'No corners are given: drawn as a ring, lengths to scale along it.' })
  expect(withNote.bottom).toBeGreaterThan(without.bottom + 16)
  expect(withNote.svg).toContain('No corners are given')
})
