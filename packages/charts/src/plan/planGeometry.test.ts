import { describe, expect, test } from 'vitest'
import type { PlanZone } from './planZone.ts'
import { outline, turned } from './planGeometry.ts'

function zones(text: string, lengthMetres = 1): PlanZone[] {
  return [...text].map((sign, index) => ({
    name: `Z${index + 1}`,
    lengthMetres,
    turn: sign === 'R' ? 'right' : sign === 'L' ? 'left' : null,
    transfer: false,
    station: null,
    value: null,
    label: null,
  }))
}

/** a rectangle of 4 × 2 cells between its corner cells, begun behind a corner */
const rectangle = '....R..R....R..R'

describe('a loop that closes', () => {
  const { cells, ringBecause } = outline(zones(rectangle))
  test('is drawn to scale', () => {
    expect(ringBecause).toBeNull()
    expect(cells.map(({ centre }) => [centre.x, centre.y])).toEqual([
      [0.5, 0],
      [1.5, 0],
      [2.5, 0],
      [3.5, 0],
      [4.5, 0],
      [4.5, 1],
      [4.5, 2],
      [4.5, 3],
      [3.5, 3],
      [2.5, 3],
      [1.5, 3],
      [0.5, 3],
      [-0.5, 3],
      [-0.5, 2],
      [-0.5, 1],
      [-0.5, 0],
    ])
  })
  test('the outside is outside', () => {
    for (const { centre, outward } of cells) {
      const before = Math.hypot(centre.x - 2, centre.y - 1.5)
      expect(Math.hypot(centre.x + outward.x * 0.1 - 2, centre.y + outward.y * 0.1 - 1.5)).toBeGreaterThan(before)
    }
  })
  test('turns to the left are its mirror image', () => {
    const mirror = outline(zones(rectangle.replaceAll('R', 'L'))).cells
    mirror.forEach(({ centre, outward }, index) => {
      expect(centre.x).toBeCloseTo(cells[index]!.centre.x, 12)
      expect(centre.y).toBeCloseTo(-cells[index]!.centre.y, 12)
      expect(outward.y).toBeCloseTo(-cells[index]!.outward.y, 12)
    })
  })
  test('upright keeps the sense of travel', () => {
    const [first] = turned(cells)
    expect([first!.ahead.x + 0, first!.ahead.y]).toEqual([0, 1])
    expect([first!.outward.x, first!.outward.y + 0]).toEqual([1, 0])
  })
  test('with a corner the other way', () => {
    expect(outline(zones('........R..R...L..R....R.....R')).ringBecause).toBeNull()
  })
})

describe('a loop that does not close is a ring, and says why', () => {
  test.each([
    ['no corners', '..........', 'No corners are given'],
    ['three corners', '....R..R....R..', 'The corners turn by 270° in all, not by 360°'],
    ['sides of unequal length', '......R..R....R..R', 'the ends lie 2.0 m apart'],
    ['a way that crosses itself', '....R...R....R....R...R....LL.L....R.R', 'zones would lie on each other'],
  ])('%s', (_, text, why) => {
    const { ringBecause, cells, ringRadius } = outline(zones(text))
    expect(ringBecause).toContain(why)
    expect(ringRadius).toBeCloseTo(text.length / (2 * Math.PI), 12)
    expect(cells[0]!.arc![0]).toBe(-Math.PI / 2)
    expect(cells.at(-1)!.arc![1]).toBeCloseTo(1.5 * Math.PI, 9)
  })
})

test('a small misfit is drawn as if it closed', () => {
  const almost = zones(rectangle)
  const stretched = almost.map((zone, index) => (index === 0 ? { ...zone, lengthMetres: 1.2 } : zone))
  expect(outline(stretched).ringBecause).toBeNull()
})

test('nonsense is refused', () => {
  expect(() => outline([])).toThrow('at least one zone')
  expect(() => outline(zones('..', 0))).toThrow('zone Z1 needs a length above 0 m')
  expect(() => outline(zones('..', Number.NaN))).toThrow(RangeError)
})
