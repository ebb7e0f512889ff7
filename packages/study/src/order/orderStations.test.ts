import { pairedDifference } from '@loopwright/stats/worlds'
import { expect, test } from 'vitest'
import { replicate } from '../runs/replicate.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { orderStations } from './orderStations.ts'
import { withPlaces } from './places.ts'

const base = stationLoop()
/** Two slow random stations side by side, with room elsewhere: apart, one blocks the other less. */
const crowded = {
  ...base,
  carriers: { ...base.carriers, count: 5 },
  breakdowns: [],
  breaks: [],
  stations: [
    { ...base.stations[0]!, zone: 0 },
    { ...base.stations[1]!, zone: 1, work: [{ task: 1, seconds: [{ kind: 'exponential', mean: 20 } as const] }] },
    {
      ...base.stations[1]!,
      name: 'D',
      title: 'Check',
      zone: 2,
      work: [{ task: 3, seconds: [{ kind: 'exponential', mean: 20 } as const] }],
    },
    { ...base.stations[2]!, zone: 6 },
  ],
  tasks: [...base.tasks, 'check'],
}
const here = { seed: 'o', workers: 0 }
const request = { move: [2], delta: 2, check: 20 }

test('room between two random stations wins, and the gain is that of fresh worlds', async () => {
  const result = await orderStations(crowded, request, here)
  expect(result.exhaustive).toBe(true)
  expect(result.candidates.map(({ places }) => places[2])).toEqual([2, 3, 4, 5])
  expect(result.winner).not.toBe(0)
  const winner = result.candidates[result.winner!]!
  const runs = await Promise.all(
    [winner.places, [0, 1, 2, 6]].map((places) =>
      replicate(withPlaces(crowded, places), { replications: 20 }, { ...here, seed: 'o-check' }),
    ),
  )
  const units = runs.map((each) => each.map((run) => run.output))
  expect(result.gain).toEqual(pairedDifference(units[0]!, units[1]!))
  expect(result.gain!.low).toBeGreaterThan(0)
  expect(result.table!.rows[0]!.maybeBest).toBe(false)
  for (const { units: kept, droppedAt } of result.candidates) expect(kept.length).toBe(droppedAt ?? result.choice!.stage)
})

test('threads change nothing', async () => {
  expect(await orderStations(crowded, request, { seed: 'o', workers: 2 })).toEqual(await orderStations(crowded, request, here))
})

test('an order given by hand is tried even where the rules would not propose it', async () => {
  const result = await orderStations(crowded, { ...request, zones: [2, 3], mine: [0, 1, 5, 6] }, here)
  expect(result.mine).toBe(1)
  expect(result.mineGain!.mean).toBeGreaterThan(0)
  await expect(orderStations(crowded, { ...request, mine: [0, 1, 6, 6] }, here)).rejects.toThrow('would both stand in Z7')
})

test('no other order than today’s is said', async () => {
  await expect(orderStations(crowded, { ...request, zones: [2] }, here)).rejects.toThrow('no other order than today’s')
})

test('too many to try all: a search by short runs finds room too', async () => {
  const result = await orderStations(crowded, { ...request, exhaustiveMax: 2 }, here)
  expect(result.exhaustive).toBe(false)
  expect(result.searched).toBe(4)
  expect(result.gain!.low).toBeGreaterThan(0)
})
