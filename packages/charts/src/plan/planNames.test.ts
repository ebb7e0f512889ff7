import { describe, expect, test } from 'vitest'
import { LINE_PIXELS, NAME_SIZE, type Name, placeNames, sideOf, type Wanted } from './planNames.ts'
import { textPixels } from '../draw/wrapWords.ts'

const up = { x: 0, y: -1 }
const left = { x: -1, y: 0 }

function want(title: string, x: number, y: number, outward = up, under = ''): Wanted {
  return { title, under, at: { x, y }, top: y, bottom: y, outward }
}

/** estimated box of a name */
function box({ lines, under, anchor, x, y }: Name): [number, number, number, number] {
  const width = Math.max(...[...lines, ...under].map((line) => textPixels(line, NAME_SIZE)))
  const from = anchor === 'middle' ? x - width / 2 : anchor === 'end' ? x - width : x
  return [from, y - NAME_SIZE, from + width, y + (lines.length + under.length - 1) * LINE_PIXELS + 3]
}

function collisions(names: readonly Name[]): number {
  return names.flatMap((a, i) =>
    names.slice(i + 1).filter((b) => {
      const [one, other] = [box(a), box(b)]
      return one[0] < other[2] && other[0] < one[2] && one[1] < other[3] && other[1] < one[3]
    }),
  ).length
}

test('sides: only what points straight up or down stands above or below', () => {
  expect([up, { x: 0, y: 1 }, left, { x: 1, y: 0 }, { x: 0.7, y: -0.7 }].map(sideOf)).toEqual(['top', 'bottom', 'left', 'right', 'right'])
})

describe('names do not touch', () => {
  const titles = ['Load', 'Refrigerant parts', 'Joining and brazing', 'Wiring', 'Fan deck and casing', 'Tightness test', 'Unload']
  test.each([200, 90, 60, 40, 30])('above the band, %d pixels apart', (apart) => {
    const names = placeNames(
      titles.map((title, index) => want(title, index * apart, 0, up, index === 0 ? 'load' : '')),
      120,
    )
    expect(names.length).toBe(7)
    expect(collisions(names)).toBe(0)
    for (const name of names) expect(box(name)[3]).toBeLessThanOrEqual(0)
  })
  test.each([90, 46, 30, 14])('to the left of the band, %d pixels apart', (apart) => {
    const names = placeNames(
      titles.map((title, index) => want(title, 0, index * apart, left, index === 0 ? 'load' : '')),
      120,
    )
    expect(collisions(names)).toBe(0)
    for (const name of names) expect(box(name)[2]).toBeLessThan(0)
  })
  test('and the check would see it', () => {
    expect(collisions([...placeNames([want('Load', 0, 0)], 100), ...placeNames([want('Unload', 10, 0)], 100)])).toBe(1)
  })
})

test('a name that had to move is led to its bracket', () => {
  const names = placeNames([want('Load', 0, 0, left), want('Wiring', 0, 3, left)], 100)
  expect(names[0]!.lead).toBeNull()
  expect(names[1]!.lead![0]).toEqual({ x: 0, y: 3 })
})
