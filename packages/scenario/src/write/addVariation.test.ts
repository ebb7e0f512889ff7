import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readScenarioWith } from '../changes/changes.ts'
import { applyVariation } from '../changes/variations.ts'
import { readScenario } from '../read.ts'
import { addVariation, variationText } from './addVariation.ts'

const demo = readFileSync(new URL('../../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')
const learning = readFileSync(new URL('../../../../scenarios/test-and-repair-line.yaml', import.meta.url), 'utf8')
const changes = {
  'carriers.count': '14',
  'drive.speed': '18 m/min',
  'stations.S6.work.test': { cv: '2 %', mean: { small: '55 s', medium: '55 s', large: '60 s', coastal: '60 s' } },
  'stations.S5.zone': 'Z14',
}

test('read again, a variation gives the line of the changes themselves, and the file keeps its comments and variations', () => {
  const text = addVariation(demo, 'what if', changes)
  const { problems, notes } = readScenario(text)
  expect(problems).toEqual([])
  expect(notes!.variations).toEqual(['train', 'fan deck next to wiring', 'what if'])
  expect(text).toContain('# the first one fills the line')
  const varied = readScenario(applyVariation(text, 'what if').text!).scenario!
  const changed = readScenarioWith(demo, changes).scenario!
  expect(varied.line).toEqual(changed.line)
  expect(varied.plan).toEqual(changed.plan)
})

test('a file without variations, or with empty ones, gets them; one of the same name gives way', () => {
  for (const text of [learning, `${learning}\nvariations:\n`]) {
    const once = addVariation(text, 'a: "b"', { 'carriers.count': '5' })
    const twice = addVariation(once, 'a: "b"', { 'carriers.count': '3' })
    expect(readScenario(twice).notes!.variations).toEqual(['a: "b"'])
    expect(readScenario(applyVariation(twice, 'a: "b"').text!).scenario!.line.carriers.count).toBe(3)
  }
})

test('texts that YAML would read as something else stay what they are', () => {
  const text = variationText('yes', { 'stations.S5.zone': '"015"', 'drive.release': '"no: # x"' })
  expect(text).toMatch(/^variations:\n {2}yes:\n/)
  expect(applyVariation(`${demo.replace(/variations:[\s\S]*$/, '')}${text}`, 'yes').text).toMatch(/zone: "015"[\s\S]*|release: "no: # x"/)
})
