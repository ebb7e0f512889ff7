import { expect, test } from 'vitest'
import { type TaskToShare, taskBalance } from './taskBalance.ts'

/** Tasks from 1 with times and arcs as the instances are published. */
function instance(times: readonly number[], arcs: readonly (readonly [number, number])[]): TaskToShare[] {
  return times.map((seconds, index) => ({
    name: `${index + 1}`,
    seconds,
    after: arcs.filter(([, second]) => second === index + 1).map(([first]) => `${first}`),
  }))
}

// Jackson, A computing procedure for a line balancing problem (1956): 11 tasks
const JACKSON = instance(
  [6, 2, 5, 7, 1, 2, 3, 6, 5, 5, 4],
  [[1, 2], [1, 3], [1, 4], [1, 5], [2, 6], [3, 7], [4, 7], [5, 7], [6, 8], [7, 9], [8, 10], [9, 11], [10, 11]], // biome-ignore format: a table
)
// Bowman, Jaeschke, Mansoor: benchmark instances of the balancing literature (task data read, years left out); optima by exhaustive search over closed sets
const BOWMAN = instance(
  [11, 17, 9, 5, 8, 12, 10, 3],
  [
    [1, 2],
    [2, 3],
    [2, 4],
    [3, 5],
    [3, 6],
    [4, 6],
    [5, 7],
    [6, 8],
  ],
)
const JAESCHKE = instance(
  [5, 3, 4, 5, 4, 5, 1, 4, 6],
  [
    [1, 2],
    [1, 3],
    [2, 4],
    [3, 4],
    [4, 5],
    [4, 6],
    [4, 7],
    [5, 8],
    [6, 9],
    [7, 9],
    [8, 9],
  ],
)
const MANSOOR = instance(
  [4, 38, 45, 12, 10, 8, 12, 10, 2, 10, 34],
  [
    [1, 4],
    [2, 4],
    [2, 5],
    [3, 11],
    [4, 6],
    [5, 7],
    [6, 8],
    [7, 9],
    [8, 10],
    [9, 10],
    [10, 11],
  ],
)

test.each([
  ['Jackson', JACKSON, 7, 8],
  ['Jackson', JACKSON, 9, 6],
  ['Jackson', JACKSON, 10, 5],
  ['Jackson', JACKSON, 13, 4],
  ['Jackson', JACKSON, 18, 3],
  ['Jackson', JACKSON, 23, 2],
  ['Bowman', BOWMAN, 20, 5],
  ['Bowman', BOWMAN, 30, 3],
  ['Jaeschke', JAESCHKE, 6, 8],
  ['Jaeschke', JAESCHKE, 8, 6],
  ['Jaeschke', JAESCHKE, 10, 4],
  ['Mansoor', MANSOOR, 48, 4],
  ['Mansoor', MANSOOR, 62, 3],
  ['Mansoor', MANSOOR, 94, 2],
] as const)('%s at a cycle of %4$s', (_, tasks, cycleSeconds, fewest) => {
  const result = taskBalance(tasks, { cycleSeconds })
  expect(result.stations.length).toBe(fewest)
  // any optimal grouping will do: each task once, none over the cycle, none before its turn
  const order = result.stations.flatMap((station) => station.tasks)
  expect([...order].sort()).toEqual(tasks.map(({ name }) => name).sort())
  for (const { seconds } of result.stations) expect(seconds).toBeLessThanOrEqual(cycleSeconds)
  const place = (name: string) => result.stations.findIndex((station) => station.tasks.includes(name))
  for (const { name, after } of tasks) for (const before of after) expect(place(before)).toBeLessThanOrEqual(place(name))
})

test('the other way round: the shortest cycle of four stations is Jackson’s 12', () => {
  expect(taskBalance(JACKSON, { stations: 4 }).cycleSeconds).toBe(12)
  expect(taskBalance(JACKSON, { stations: 2 }).cycleSeconds).toBe(23)
})

test('what cannot be shared is refused', () => {
  const task = (name: string, after: string[] = []) => ({ name, seconds: 5, after })
  expect(() => taskBalance([task('a'), task('a')], { stations: 1 })).toThrow('two tasks called "a"')
  expect(() => taskBalance([task('a', ['z'])], { stations: 1 })).toThrow('"a" comes after "z", which is no task')
  expect(() => taskBalance([task('a', ['b']), task('b', ['a'])], { stations: 1 })).toThrow('circle')
  expect(() => taskBalance([task('a')], { cycleSeconds: 4 })).toThrow('longer than the cycle')
})
