import { expect, test } from 'vitest'
import { parse } from 'yaml'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { fileSchema, type ScenarioFile } from './file.ts'

test('the authoring form is typed as it is checked', () => {
  const file: ScenarioFile = {
    format: 1,
    question: 'q',
    name: 'n',
    carriers: { count: 2, length: '0.8 m' },
    loop: ['3 × 1 m', { length: '2 m', turn: 'left' }],
    stations: { L: { zone: 'Z01', load: { t: { cv: '10 %', mean: { a: '1 s' } } } } },
    products: { variants: { a: '100 %' }, mix: { kind: 'random', weights: { a: 1 } } },
  }
  expect(fileSchema.safeParse(file).success).toBe(true)
  // @ts-expect-error a count is a number
  expect(fileSchema.safeParse({ ...file, carriers: { count: '2' } } satisfies ScenarioFile).success).toBe(false)
})

test('a right file passes, and every key is optional but five', () => {
  const file = parse(scenarioText()) as Record<string, unknown>
  const needed = Object.keys(file).filter((key) => {
    const { [key]: _, ...rest } = file
    return !fileSchema.safeParse(rest).success
  })
  expect(needed).toEqual(['format', 'question', 'name', 'carriers', 'stations'])
})
