import { readdirSync, readFileSync } from 'node:fs'
import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { testLine } from './scenarioTexts.ts'

const FOLDER = new URL('scenarios/', import.meta.url)

test.each(readdirSync(FOLDER))('%s can be read', (name) => {
  const { problems } = readScenario(readFileSync(new URL(name, FOLDER), 'utf8'))
  expect(problems.filter(({ severity }) => severity === 'error')).toEqual([])
})

test('a line can be changed', () => {
  expect(testLine().line.stations).toHaveLength(3)
  expect(testLine((text) => text.replace('count: 4', 'count: 5')).line.carriers.count).toBe(5)
})
