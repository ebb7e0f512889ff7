import { expect, test } from 'vitest'
import { byTask } from './byTask.ts'

test('variants of a task stand together, and no variant is one of its own', () => {
  const of = (task: string, variant: string | null, line: number) => ({
    task,
    variant,
    operator: null,
    observedSeconds: 45,
    rating: null,
    when: null,
    line,
    place: '',
  })
  const groups = byTask([of('wire', 'a', 2), of('fit', null, 3), of('wire', 'b', 4), of('wire', null, 5), of('wire', 'a', 6)])
  expect(groups.map((group) => group.map(({ line }) => line))).toEqual([[2, 6], [4], [5], [3]])
})
