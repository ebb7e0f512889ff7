import { marksOf, textsOf } from '../../../../tests/helpers/marksOf.ts'
import { expect, test } from 'vitest'
import { waitingCircle } from './waitingCircle.ts'

const zones = Array.from({ length: 60 }, (_, index) => ({ name: `Z${index}`, station: index === 1 ? 'Test' : null }))

test('too many carriers: each zone waits for the one below, the last for the first', () => {
  const figure = waitingCircle(
    { reason: 'too many carriers', circle: [0, 1, 2], behind: [], merge: null, unmanned: [], understaffed: [] },
    zones,
    750,
  )
  expect(figure.finding).toBe(
    'After 12.5 min the line stands still, for 3 zones wait for each other in a circle: there are too many carriers: every place to stand on the way round is taken.',
  )
  expect(textsOf(figure)).toEqual(['Z0 waits for Z1', 'Z1 Test waits for Z2', 'Z2 waits for Z0'])
  expect(figure.table.rows.map(({ cells }) => cells)).toEqual([
    ['Z0', '–', 'Z1'],
    ['Z1', 'Test', 'Z2'],
    ['Z2', '–', 'Z0'],
  ])
})

test('a merge is named, and who waits behind', () => {
  const figure = waitingCircle(
    { reason: 'merge fills its own exit', circle: [4, 5], behind: [2, 3], merge: 5, unmanned: [], understaffed: [] },
    zones,
    60,
  )
  expect(figure.finding).toContain('Z5, where two ways meet, fills its own exit')
  expect(figure.finding).toContain('Behind it wait Z2 and Z3.')
  expect(figure.table.note).toBe('Behind the circle wait Z2 and Z3.')
})

test('zones that wait for operators are told apart from the circle, which is the reason', () => {
  const figure = waitingCircle(
    { reason: 'too many carriers', circle: [4, 5], behind: [], merge: null, unmanned: [1, 2], understaffed: [2] },
    zones,
    60,
  )
  expect(figure.finding).toMatch(
    /every place to stand on the way round is taken\. Apart from it Z1 and Z2 wait for operators who are never free\.$/,
  )
})

test('a long circle is drawn with a gap, the table has all of it', () => {
  const figure = waitingCircle(
    { reason: 'too many carriers', circle: zones.map((_, z) => z), behind: [], merge: null, unmanned: [], understaffed: [] },
    zones,
    0,
  )
  expect(marksOf(figure, 'dot').filter(({ shape }) => shape === 'square')).toHaveLength(23)
  expect(textsOf(figure).at(-2)).toBe('Z59 waits for Z0')
  expect(textsOf(figure).at(-1)).toContain('… 37 more zones')
  expect(figure.table.rows).toHaveLength(60)
})

test('without a circle there is nothing to draw', () =>
  expect(() =>
    waitingCircle({ reason: 'no way on', circle: [], behind: [1], merge: null, unmanned: [], understaffed: [] }, zones, 0),
  ).toThrow('a standstill without a circle cannot be drawn as one'))
