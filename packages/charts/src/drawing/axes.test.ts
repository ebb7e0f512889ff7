import { expect, test } from 'vitest'
import { acrossAxis, acrossRoom, labelsWidth, upAxis, upTicks } from './axes.ts'
import type { Drawing } from './drawing.ts'
import { scaleOf } from './scale.ts'

const drawing: Drawing = {
  heightPixels: 100,
  across: { from: 0, to: 40, title: 'Zones', ticks: Array.from({ length: 41 }, (_, at) => ({ at, text: String(at) })) },
  up: { from: 200, to: 300, title: 'Units', cut: true },
  marks: [],
}
const x = scaleOf(drawing.across, 40, 340)
const y = scaleOf(drawing.up, 120, 20)
const textsOf = (pieces: readonly { readonly svg: string }[]): string[] =>
  pieces.flatMap(({ svg }) => /<text[^>]*>([^<]*)/.exec(svg)?.[1] ?? [])

test('of many ticks so many are named that no name lies on another', () => {
  const named = textsOf(acrossAxis(drawing, x, y))
  expect(named.at(-1)).toBe('Zones')
  expect(named.slice(0, 3)).toEqual(['0', '4', '8'])
})

test('an axis that does not begin at 0 has two strokes across it', () => {
  const strokes = (cut: boolean) => upAxis({ ...drawing, up: { ...drawing.up, cut } }, [], x, y).filter(({ ink }) => ink === 'line')
  expect([strokes(true).length, strokes(false).length]).toEqual([2, 0])
})

test('labels of the upright axis take what they need, up to a share of the width', () => {
  const long = { ...drawing.up, ticks: [{ at: 250, text: 'Pre-assembly of the refrigerant pipes and brazing' }] }
  expect(labelsWidth(upTicks(long, 300))).toBeLessThanOrEqual(300 * 0.36 + 7)
  expect(upTicks(long, 300)[0]!.text).toContain('…')
  expect(labelsWidth([])).toBe(0)
})

test('the level axis takes room on its side', () => {
  expect(acrossRoom(drawing)).toEqual({ above: 0, below: 42 })
  expect(acrossRoom({ ...drawing, across: { ...drawing.across, above: true } })).toEqual({ above: 40, below: 4 })
})
