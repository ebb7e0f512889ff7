import { expect, test } from 'vitest'
import type { FaultCell } from '../cells/cell.ts'
import { type StepState, stepper } from './steps.ts'

const mark = (line: number, gives: string[] = [], uses: string[] = []) => ({ line, column: 5, endLine: line, gives, uses })

function made(signal = new AbortController().signal) {
  const cells: FaultCell[] = []
  const states: [number, StepState][] = []
  const parts = stepper({
    file: 'a.ts',
    places: undefined,
    show: (cell) => void cells.push(cell),
    onStep: ({ line }, state) => void states.push([line, state]),
    signal,
  })
  return { ...parts, cells, states }
}

test('one that fails is told in its place; those that need it wait, and others are carried out', async () => {
  const { steps, cells, states, faults } = made()
  const { next } = steps
  const ran: number[] = []
  const good = (line: number) => async () => {
    ran.push(line)
    return next
  }
  const bad = async () => {
    throw new Error('no such thing')
  }
  expect(await steps(mark(1, ['a']), bad)).toBe(false)
  await steps(mark(2, ['b'], ['a']), good(2))
  await steps(mark(3, [], ['b']), good(3))
  await steps(mark(4, ['c'], []), good(4))
  await steps(mark(5, ['a'], []), good(5))
  await steps(mark(6, [], ['a', 'c']), good(6))
  expect(ran).toEqual([4, 5, 6])
  expect(states.filter(([, state]) => state !== 'running')).toEqual([
    [1, 'failed'],
    [2, 'waiting'],
    [3, 'waiting'],
    [4, 'done'],
    [5, 'done'],
    [6, 'done'],
  ])
  expect(cells.map(({ place, message, waiting }) => [place, message, waiting])).toEqual([
    ['a.ts:1:5', 'no such thing', false],
    ['a.ts:2:5', 'not carried out: it needs "a", and line 1 failed', true],
    ['a.ts:3:5', 'not carried out: it needs "b", and line 1 failed', true],
  ])
  expect(faults.map(({ line }) => line)).toEqual([1])
})

test('a step that gives back anything else ends the body', async () => {
  const { steps } = made()
  expect(await steps(mark(1), async () => undefined)).toBe(true)
  expect(await steps(mark(1), async () => steps.next)).toBe(false)
})

test('what fails because everything was stopped is no fault', async () => {
  const stop = new AbortController()
  const { steps, faults, cells } = made(stop.signal)
  const ended = await steps(mark(1), async () => {
    stop.abort()
    throw new Error('stopped')
  })
  expect([ended, faults, cells]).toEqual([true, [], []])
})
