import { isDeepStrictEqual } from 'node:util'
import { serialize } from 'node:v8'
import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { scenarioWith } from './scenarioWith.ts'

const text = scenarioText()
const source = { file: 'line.yaml', text, readBeside: () => null }
const base = readScenario(text).scenario!
const speed = readScenario(scenarioText(['12 m/min', '15 m/min'])).scenario!

test('any value by its path; changes add up; the scenario itself stays', () => {
  const scenario = scenarioWith(source, base)
  expect(scenario.with({ 'drive.speed': '15 m/min' }).line).toEqual(speed.line)
  const both = scenario.with({ 'drive.speed': '15 m/min' }).with({ 'carriers.count': 5 })
  expect([both.line.carriers.count, both.line.paths]).toEqual([5, speed.line.paths])
  expect(scenario.line).toEqual(base.line)
})

test('it is plain data all the same', () => {
  const scenario = scenarioWith(source, base)
  expect(isDeepStrictEqual({ ...scenario }, base)).toBe(true)
  expect(serialize(scenario).length).toBeGreaterThan(0)
})

test.each([
  [{ 'drive.sped': '15 m/min' }, 'drive.sped'],
  [{ 'drive.speed': '15 m/mn' }, '"m/mn" is not a known unit'],
  [{}, 'scenario.with takes changes by path'],
])('%j is refused', (changes, message) => expect(() => scenarioWith(source, base).with(changes)).toThrow(message))
