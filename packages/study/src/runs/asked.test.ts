import { describe, expect, test } from 'vitest'
import { checkPlan, checkReplications, checkWorkers, ONE_WORLD } from './asked.ts'

describe('replications', () => {
  test('are whole, and as many as are needed', () => {
    expect(() => checkReplications(1)).not.toThrow()
    expect(() => checkReplications(2, 'losses need', 2)).not.toThrow()
    for (const wrong of [0, -1, 2.5, Number.NaN, '5', undefined]) expect(() => checkReplications(wrong)).toThrow(RangeError)
  })
  test('are told of with what needs them', () => {
    expect(() => checkReplications(2.5)).toThrow('a study needs at least 1 replication, a whole number, not 2.5')
    expect(() => checkReplications('5')).toThrow('not the text "5"')
    expect(() => checkReplications(1, 'a grid needs', 2, ONE_WORLD)).toThrow(
      'a grid needs at least 2 replications, not 1: one world says nothing about chance',
    )
  })
})

test('a plan is a number from 0, or there is none', () => {
  for (const plan of [null, undefined, 0, 0.5, 320]) expect(() => checkPlan(plan)).not.toThrow()
  for (const plan of [-1, Number.NaN, Number.POSITIVE_INFINITY, '320']) expect(() => checkPlan(plan)).toThrow('a plan is so many units')
})

test('threads are counted from 0', () => {
  for (const workers of [undefined, 0, 3]) expect(() => checkWorkers(workers)).not.toThrow()
  expect(() => checkWorkers(-1)).toThrow('workers must be a whole number, 0 for the calling thread, not -1')
  expect(() => checkWorkers('2')).toThrow(RangeError)
})
