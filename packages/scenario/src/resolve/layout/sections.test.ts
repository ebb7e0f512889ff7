import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

const read = (...changes: [string, string][]) => readScenario(scenarioText(...changes))

test('without a word one section holds all zones; else those that are named, in the order of the line', () => {
  expect(read().scenario!.line.sections).toEqual([{ name: 'line', zones: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] }])
  expect(read(['', 'sections: { back: [Z06, Z05], front: [Z01] }']).scenario!.line.sections).toEqual([
    { name: 'back', zones: [4, 5] },
    { name: 'front', zones: [0] },
  ])
})

test('a stop names a section', () => {
  const stop = (at: string) => read(['', `sections: { back: [Z06] }\nstops: { belt: { at: ${at}, after: 1 h, lasts: 5 min } }`])
  for (const at of ['back', 'section back', '{ section: back }'])
    expect(stop(at).scenario!.line.breakdowns[0]!.part).toEqual({ kind: 'section', index: 0 })
  expect(stop('{ line: whole }').problems.map(({ code }) => code)).toEqual(['E_UNKNOWN_SECTION'])
})
