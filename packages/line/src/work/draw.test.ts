/** Which draw is whose: MODEL.md §9. */
import { toGrid } from '@loopwright/kernel'
import { quantile, stream } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop, tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { drawForProduct, drawInOrder, makeRoomFor } from './draw.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'

/** uniform (0, 1): the draw is the uniform itself, rounded to the grid */
const U = { kind: 'uniform', min: 0, max: 1 } as const
const productDraw = (line: Line, serial: number): number => {
  drawForProduct(line, line.work.entrySampler[0]!, 0, serial)
  return line.draws.drawn[0]!
}
const moveDraw = (line: Line, path: number): number => {
  drawInOrder(line, line.moves.moveSampler[path]!, line.moves.moveStream[path]!)
  return line.draws.drawn[0]!
}
const uniforms = (seed: string, name: string, count: number) => {
  const next = stream(seed, 0, name)
  return Array.from({ length: count }, () => toGrid(next()))
}

/** Seconds of a task by serial, read off the events of its station. */
function taskSeconds(lines: readonly string[], station: string, duty: 'load' | 'work'): Map<number, number> {
  const serialOf = new Map<string, number>()
  const begun = new Map<string, number>()
  const seconds = new Map<number, number>()
  for (const line of lines) {
    const [at, word, second, third, fourth] = line.split(' ') as [string, string, string, string, string]
    if (word === 'take') serialOf.set(third, Number(second.slice(1)))
    if (word !== duty || third !== station) continue
    if (second === 'begins') begun.set(fourth, Number(at))
    else seconds.set(serialOf.get(fourth)!, Number(at) - begun.get(fourth)!)
  }
  return seconds
}

describe('draws of a product', () => {
  test('draw k belongs to serial k, whichever order the carriers come in', () => {
    // Two load stations, 40 zones apart, in a loop of 60: products loaded at Z40 reach the work at Z50 long before older ones loaded at Z0.
    const spec = smallLoop({
      zones: 60,
      start: 50,
      move: 0.25,
      clear: 0.25,
      stations: [
        { at: 0, load: { 'fit base': U } },
        { at: 40, load: { 'fit base': U } },
        { at: 50, work: { weld: U } },
        { at: 55, unload: true },
      ],
      until: 600,
    })
    const { lines } = tell(spec, '11')
    const serialsAtWork: number[] = []
    const on = new Map<string, number>()
    for (const line of lines) {
      const [, word, second, third, fourth] = line.split(' ') as [string, string, string, string, string]
      if (word === 'take') on.set(third, Number(second.slice(1)))
      if (word === 'work' && second === 'begins') serialsAtWork.push(on.get(fourth)!)
    }
    // they do come out of order, and one stays while 64 others are loaded, so that the ring of draws has to grow
    expect(serialsAtWork).not.toEqual([...serialsAtWork].sort((a, b) => a - b))
    const late = Math.max(...serialsAtWork.map((serial, k) => Math.max(...serialsAtWork.slice(0, k), 0) - serial))
    expect(late).toBeGreaterThan(64)
    const weld = uniforms('11', 'task/weld', 2000)
    const times = taskSeconds(lines, 'S50', 'work')
    expect(times.size).toBeGreaterThan(200)
    expect([...times.values()]).toEqual([...times.keys()].map((serial) => weld[serial]))
    // one task at two stations: one stream
    const base = uniforms('11', 'task/fit base', 2000)
    for (const station of ['S0', 'S40']) {
      const loads = taskSeconds(lines, station, 'load')
      expect([...loads.values()]).toEqual([...loads.keys()].map((serial) => base[serial]))
    }
  })

  test('all variants of a task share its stream; a constant variant leaves its draw unused', () => {
    const spec = smallLoop({
      zones: 2,
      start: [1],
      move: 1,
      clear: 1,
      variants: 2,
      mix: { kind: 'pattern', sequence: [0, 1] },
      stations: [{ at: 0, unload: true, load: { fit: [U, 0.5] } }],
      until: 60,
    })
    const draws = uniforms('3', 'task/fit', 40)
    const times = taskSeconds(tell(spec, '3').lines, 'S0', 'load')
    expect(times.size).toBeGreaterThan(15)
    for (const [serial, seconds] of times) expect(seconds).toBe(serial % 2 === 0 ? draws[serial] : 0.5)
  })

  test('a replay list is taken by serial', () => {
    const spec = smallLoop({
      zones: 2,
      start: [1],
      move: 1,
      clear: 1,
      stations: [{ at: 0, unload: true, load: { fit: { kind: 'replay', values: [1, 2, 5] } } }],
      until: 60,
    })
    const times = taskSeconds(tell(spec).lines, 'S0', 'load')
    expect([...times].slice(0, 6)).toEqual([
      [0, 1],
      [1, 2],
      [2, 5],
      [3, 1],
      [4, 2],
      [5, 5],
    ])
  })
})

test('every other stream is taken in order of use', () => {
  const spec = smallLoop({
    zones: 3,
    start: [0],
    move: [U, 1, 1],
    clear: 0,
    stations: [{ at: 1, load: true, unload: true, release: U }],
    until: 60,
  })
  const lines = timeline(spec)
  const at = (pattern: RegExp) => lines.filter((line) => pattern.test(line)).map((line) => Number(line.split(' ')[0]))
  const moves = at(/rest Z1/).map((end, k) => end - at(/leave Z0/)[k]!)
  expect(moves.length).toBeGreaterThan(10)
  expect(moves).toEqual(uniforms('hand', 'move/Z0', moves.length))
  const releases = at(/release ends/).map((end, k) => end - at(/release begins/)[k]!)
  expect(releases).toEqual(uniforms('hand', 'release/S1', releases.length))
  // a list is taken in turn
  const listed = smallLoop({ zones: 3, start: [0], move: [{ kind: 'replay', values: [1, 2] }, 1, 1], clear: 0, until: 30 })
  const told = timeline(listed, 'rest', 'leave').filter((line) => /leave Z0|rest Z1/.test(line))
  expect(told.slice(0, 8)).toEqual([
    '0 leave Z0 c0',
    '1 rest Z1 c0',
    '3 leave Z0 c0',
    '5 rest Z1 c0',
    '7 leave Z0 c0',
    '8 rest Z1 c0',
    '10 leave Z0 c0',
    '12 rest Z1 c0',
  ])
})

test('times known ahead are those of the uniforms, whether one sampler serves all variants or each has its own', () => {
  const L = (mean: number) => ({ kind: 'lognormal', mean, cv: 0.2 }) as const
  const spec = smallLoop({
    zones: 3,
    start: [0],
    move: 1,
    clear: 1,
    variants: 2,
    stations: [{ at: 1, load: { same: [U, U], normal: [L(3), L(5)], mixed: [L(3), U] } }],
  })
  const line = buildLine(spec)
  resetLine(line, '5', 0)
  for (const serial of [40, 0, 7, 15, 16, 33]) {
    spec.tasks.forEach((name, task) => {
      for (const variant of [0, 1]) {
        const next = stream('5', 0, `task/${name}`)
        const u = Array.from({ length: serial + 1 }, () => next())[serial]!
        const time = spec.stations[0]!.load![task]!.seconds[variant]!
        drawForProduct(line, line.work.entrySampler[2 * task + variant]!, task, serial)
        expect(line.draws.drawn[0]).toBe(toGrid(quantile(time, u)))
      }
    })
  }
})

test('use k of a stream takes its uniform k, also where the uses before took theirs from a list', () => {
  // two paths out of one zone share its stream: the first takes a list in turn, the second the uniform itself
  const list = { kind: 'replay', values: [4, 3] } as const
  const spec = smallGraph({
    zones: 3,
    start: [0],
    paths: [
      { from: 0, to: 1, move: list },
      { from: 0, to: 2, move: U },
      { from: 1, to: 0 },
      { from: 2, to: 0 },
    ],
    move: 1,
    clear: 0,
  })
  const line = buildLine(spec)
  resetLine(line, 'hand', 0)
  const third = uniforms('hand', 'move/Z0', 3)[2]
  expect([moveDraw(line, 0), moveDraw(line, 0), moveDraw(line, 1), moveDraw(line, 0)]).toEqual([4, 3, third, 3])
})

test('the ring of draws doubles when an old product needs it, and keeps what was drawn', () => {
  const line = buildLine(smallLoop({ zones: 3, start: [0], move: 1, clear: 1, stations: [{ at: 1, load: { fit: U } }] }))
  resetLine(line, '5', 0)
  const draws = uniforms('5', 'task/fit', 300)
  expect(productDraw(line, 10)).toBe(draws[10])
  line.goods.carrierSerial[0] = 10
  makeRoomFor(line, 63)
  expect(line.draws.taskRoom).toBe(64)
  makeRoomFor(line, 64)
  expect(line.draws.taskRoom).toBe(128)
  expect([3, 10, 74, 100].map((serial) => productDraw(line, serial))).toEqual([3, 10, 74, 100].map((serial) => draws[serial]))
  makeRoomFor(line, 127)
  expect(line.draws.taskRoom).toBe(128)
  makeRoomFor(line, 128)
  expect(line.draws.taskRoom).toBe(256)
  expect([10, 100, 200].map((serial) => productDraw(line, serial))).toEqual([10, 100, 200].map((serial) => draws[serial]))
})

test('a constant takes no draw', () => {
  const line = buildLine(smallLoop({ zones: 2, start: [0], move: [{ kind: 'constant', value: 0.3 }, U], clear: 0 }))
  resetLine(line, '5', 0)
  expect(moveDraw(line, 0)).toBe(toGrid(0.3))
  expect(line.draws.streamUses[line.moves.moveStream[0]!]).toBe(0)
  expect(moveDraw(line, 1)).toBe(uniforms('5', 'move/Z1', 1)[0])
  expect(line.draws.streamUses[line.moves.moveStream[1]!]).toBe(1)
})
