import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { placesOf, withPlaces } from './places.ts'
import { allPlaces, neighbours, whyNotPlaces } from './stationPlaces.ts'

const line = stationLoop()

test('one station between load and unload: as many places as free zones between them, today’s first', () => {
  // load in zone 0, unload in zone 4: the work may stand in 1, 2 or 3
  expect(allPlaces(line, { move: [1] }, 200)).toEqual([
    [0, 2, 4],
    [0, 1, 4],
    [0, 3, 4],
  ])
})

test('more than asked for: none are given', () => {
  expect(allPlaces(line, { move: [1] }, 2)).toBeNull()
})

test('two stations in three zones with a rule between them: three of six', () => {
  const two = { ...line, stations: [...line.stations, { ...line.stations[1]!, name: 'D', title: 'Check', zone: 3 }] }
  expect(allPlaces(two, { move: [1, 3], zones: [1, 2, 3] }, 200)!.length).toBe(6)
  const ordered = allPlaces(two, { move: [1, 3], zones: [1, 2, 3], before: [[1, 3]] }, 200)!
  expect(ordered.length).toBe(3)
  for (const places of ordered) expect(places[1]!).toBeLessThan(places[3]!)
  expect(neighbours(two, { move: [1, 3], zones: [1, 2, 3] }, placesOf(two))).toEqual([
    [0, 1, 4, 3],
    [0, 2, 4, 1],
    [0, 3, 4, 2],
  ])
})

test('what cannot stand is said', () => {
  expect(whyNotPlaces(line, { move: [1] }, [0, 0, 4])).toBe('A and B would both stand in Z1')
  expect(whyNotPlaces(line, { move: [1] }, [0, 5, 4])).toBe('B must come before C, where products leave the loop')
  expect(
    whyNotPlaces(
      { ...line, stations: line.stations.map((each) => ({ ...each, unload: null })) },
      { move: [1], before: [[1, 0]] },
      [0, 2, 4],
    ),
  ).toBe('B must come before A')
  expect(() => allPlaces(line, { move: [] }, 9)).toThrow('no station may move')
  expect(() => allPlaces(line, { move: [1], zones: [4] }, 9)).toThrow('Z5 is taken by C, which stays')
  expect(withPlaces(line, [0, 3, 4]).stations[1]!.zone).toBe(3)
})
