import { describe, expect, test } from 'vitest'
import type { PlanZone } from './planZone.ts'
import { outline, turned } from './planGeometry.ts'

/** R and L: square corners; r and l: bends */
function zones(text: string, lengthMetres = 1): PlanZone[] {
  return [...text].map((sign, index) => ({
    name: `Z${index + 1}`,
    lengthMetres,
    turn: /r/i.test(sign) ? 'right' : /l/i.test(sign) ? 'left' : null,
    transfer: /[RL]/.test(sign),
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

describe('corners that are no transfers', () => {
  const { cells, ringBecause } = outline(zones('....rr....rr'))
  test('are bends as long as their zones: two straights with round ends', () => {
    expect(ringBecause).toBeNull()
    // a quarter of a circle of 1 m has the radius 2/π
    const radius = 2 / Math.PI
    expect(cells[4]!.exit.x).toBeCloseTo(4 + radius, 12)
    expect(cells[4]!.exit.y).toBeCloseTo(radius, 12)
    for (const { centre } of cells.slice(6, 10)) expect(centre.y).toBeCloseTo(2 * radius, 12)
    expect(Math.hypot(cells.at(-1)!.exit.x, cells.at(-1)!.exit.y)).toBeCloseTo(0, 12)
  })
  test('are square where only square corners close', () => {
    // by squares the corner of 4 m takes 1.5 m more of its two sides than the others, which the opposite sides have; by bends 1.9 m
    const lengths = [1, 1, 1, 1, 4, 1, 1, 1, 1.1, 1.1, 1.1, 1.1, 1.1, 1, 1.75, 1.75, 1]
    const drawn = outline(zones('....r..r.....r..r').map((zone, index) => ({ ...zone, lengthMetres: lengths[index]! })))
    expect(drawn.ringBecause).toBeNull()
    expect(drawn.cells.flatMap(({ pieces }) => pieces).every(({ radius }) => radius === null)).toBe(true)
  })
})

describe('a loop that does not close is a ring, and says why', () => {
  test.each([
    ['no corners', '..........', 'No corners are given'],
    ['three corners', '....R..R....R..', 'The corners turn by 270° in all, not by 360°'],
    ['sides of unequal length', '......R..R....R..R', 'the ends lie 2.0 m apart'],
    ['a way that crosses itself', '....R...R....R....R...R....LL.L....R.R', 'zones would lie on each other'],
  ])('%s', (_, text, why) => {
    const { ringBecause, cells } = outline(zones(text))
    expect(ringBecause).toContain(why)
    // the lengths are kept along the middle, and the end is the start
    for (const { pieces } of cells) expect(pieces.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(1, 12)
    const [first, last] = [cells[0]!.pieces[0]!.from, cells.at(-1)!.exit]
    expect(Math.hypot(first.x - last.x, first.y - last.y)).toBeCloseTo(0, 9)
  })
  test('of few zones it is round, of more it has two straights, the first from the first zone on', () => {
    expect(outline(zones('.......')).cells.every(({ pieces }) => pieces.every(({ radius }) => radius !== null))).toBe(true)
    const straight = outline(zones('..........')).cells.filter(({ pieces }) => pieces.every(({ radius }) => radius === null))
    expect(straight.map(({ index }) => index)).toEqual([0, 1, 5, 6])
  })
  test.each([1, 2, 9, 11, 23])('%d zones: each is drawn', (count) => {
    const { cells } = outline(zones('.'.repeat(count)))
    for (const { pieces } of cells) expect(pieces.length).toBeGreaterThan(0)
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
