import { expect, test } from 'vitest'
import { examplesOf, hiddenNames } from './examples.ts'

test('a public function shown with a name that is not public', () => {
  const [example] = examplesOf({ file: 'a.ts', text: '/** @example f(NOTHING) // => 4 */' })
  const own = { f: () => 4, NOTHING: null, g: () => 5 }
  expect(hiddenNames(example!, { f: own.f }, own)).toEqual(['NOTHING'])
  expect(hiddenNames(example!, own, own)).toEqual([])
  // nobody but the file itself is shown how
  expect(hiddenNames(example!, {}, own)).toEqual([])
})
