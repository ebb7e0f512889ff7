import { describe, expect, test } from 'vitest'
import type { Cell } from '../cells/cell.ts'
import type { StepMark } from '../load/steps.ts'
import { cellsOf, keysOf, type Part, plannedParts } from './parts.ts'

const mark = (line: number, gives: string[] = [], uses: string[] = [], endLine = line): StepMark => ({
  line,
  column: 3,
  endLine,
  gives,
  uses,
})
const TEXT = 'head\na = study()\nb = a + 1\nprose()\nshow(b)\nend'
const MARKS = [mark(2, ['a']), mark(3, ['b'], ['a']), mark(4), mark(5, [], ['b'])]
const cell = (id: string): Cell => ({ kind: 'prose', id, markdown: id })
const part = (key: string, ids: string[], state: Part['state'] = 'fresh'): Part => ({ key, mark: null, cells: ids.map(cell), state })

describe('the key of a step changes with what it depends on', () => {
  const before = keysOf(MARKS, TEXT, ['scenario'])
  const changed = (text: string, others = ['scenario']): boolean[] => keysOf(MARKS, text, others).map((key, index) => key !== before[index])

  test.each([
    ['nothing', TEXT, [false, false, false, false]],
    ['a study: what uses it, however far', TEXT.replace('study()', 'other()'), [true, true, false, false].with(3, true)],
    ['prose: itself', TEXT.replace('prose()', 'words()'), [false, false, true, false]],
    ['what stands outside of all steps: all', TEXT.replace('head', 'import'), [true, true, true, true]],
  ])('%s', (_, text, expected) => expect(changed(text)).toEqual(expected))
  test('the scenario: all', () => expect(changed(TEXT, ['another'])).toEqual([true, true, true, true]))
})

describe('the parts of a new run', () => {
  const keys = ['k1', 'k2', 'k3']
  const marks = [mark(1), mark(2), mark(3)]
  const before = [part('k1', ['a']), part('old', ['b']), part('k3', ['c'])]

  test('those with the same key are fresh; a changed one shows what it told before', () => {
    expect(plannedParts(marks, keys, before).map(({ state, cells }) => [state, cells.map(({ id }) => id)])).toEqual([
      ['fresh', ['a']],
      ['stale', ['b']],
      ['fresh', ['c']],
    ])
  })
  test('a new one has nothing to show; one that is gone is gone', () => {
    const [first, added, third] = plannedParts(marks, keys, [part('k1', ['a']), part('k3', ['c'])])
    expect([first!.cells.length, added!.cells.length, third!.cells.length]).toEqual([1, 0, 1])
    expect(plannedParts([mark(1)], ['k3'], before).map(({ cells }) => cells.map(({ id }) => id))).toEqual([['c']])
  })
  test('what did not end well is not fresh with the same key', () =>
    expect(plannedParts([mark(1)], ['k1'], [part('k1', ['a'], 'failed')])[0]!.state).toBe('stale'))
  test('a body that could not be split is one part', () =>
    expect(plannedParts([], [], before)).toEqual([{ key: '', mark: null, cells: ['a', 'b', 'c'].map(cell), state: 'stale' }]))
})

test('an older cell gives way to a newer one of its name', () =>
  expect(cellsOf([part('1', ['a', 'b'], 'stale'), part('2', ['b'])]).map(({ id }) => id)).toEqual(['a', 'b']))
