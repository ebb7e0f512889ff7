import { expect, test } from 'vitest'
import { type ColourWishes, colourWanted, columnsOf } from './terminalLook.ts'

test.each<[ColourWishes, boolean, boolean]>([
  [{}, true, true],
  [{}, false, false],
  [{ TERM: 'dumb' }, true, false],
  // no-color.org: "when present and not an empty string (regardless of its value)"
  [{ NO_COLOR: '1' }, true, false],
  [{ NO_COLOR: '0' }, true, false],
  [{ NO_COLOR: '' }, true, true],
  // force-color.org: likewise for colours where there is no terminal; Node: 0 and false take them away, and it goes before NO_COLOR
  [{ FORCE_COLOR: '1' }, false, true],
  [{ FORCE_COLOR: 'true', TERM: 'dumb' }, false, true],
  [{ FORCE_COLOR: '0' }, true, false],
  [{ FORCE_COLOR: 'false' }, true, false],
  [{ FORCE_COLOR: '' }, false, false],
  [{ FORCE_COLOR: '1', NO_COLOR: '1' }, false, true],
])('%j, terminal %s: %s', (wishes, isTerminal, expected) => expect(colourWanted(wishes, isTerminal)).toBe(expected))

test.each([
  [undefined, 80],
  [0, 80],
  [20, 60],
  [60, 60],
  [97, 97],
  [120, 120],
  [300, 120],
])('%s columns: %i', (columns, expected) => expect(columnsOf(columns)).toBe(expected))
