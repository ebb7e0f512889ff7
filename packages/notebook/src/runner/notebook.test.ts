import { expect, test } from 'vitest'
import { isNotebook, notebook } from './notebook.ts'

test('a notebook is known as one, other modules are not', () => {
  expect(isNotebook(notebook({ title: 'a', scenario: 'a.yaml' }, () => {}))).toBe(true)
  for (const other of [null, undefined, 3, 'notebook', {}, { kind: 'table' }]) expect(isNotebook(other)).toBe(false)
})
