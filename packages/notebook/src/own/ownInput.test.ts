import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { type InputRange, ownInput } from './ownInput.ts'

const text = scenarioText()
const { scenario, notes, values } = readScenario(text)
const input = (name: string, range: InputRange) => ownInput({ scenario: scenario!, notes: notes!, values }, name, range)
const RANGE = { from: 2, to: 20, step: 1 }

test('a value as the page names it, or by its path', () => {
  expect(input('carriers', RANGE)).toMatchObject({
    key: 'carriers',
    group: 'Of this notebook',
    does: { kind: 'path', path: 'carriers.count' },
    shown: { ...RANGE, unit: '' },
  })
  expect(input('speed', { ...RANGE, unit: 'm/min', label: 'How fast' })).toMatchObject({
    key: 'speed',
    label: 'How fast',
    file: '12 m/min',
    does: { path: 'drive.speed' },
  })
  expect(input('drive.speed', { ...RANGE, unit: 'm/min' })).toMatchObject({
    key: 'drive.speed',
    file: '12 m/min',
    shown: { unit: 'm/min' },
  })
})

test.each<[string, string, Partial<InputRange>, string]>([
  ['a name that there is not', 'sped', {}, 'the scenario has no number called "sped"'],
  ['another unit', 'drive.speed', { unit: 'm/s' }, 'the scenario says 12 m/min, not a number in m/s'],
  ['a path to no number', 'drive', {}, 'the scenario has no number called "drive"'],
  ['no range', 'carriers', { from: 20 }, 'from 20 to 20 is no range'],
  ['no step', 'carriers', { step: 0 }, 'a step of 0 does not fit'],
  ['a text', 'carriers', { to: '9' as never }, 'to is "9", not a number'],
  ['a misspelt name of the range', 'carriers', { setp: 1 } as never, 'knows nothing called "setp"'],
])('%s is refused', (_, name, change, message) => expect(() => input(name, { ...RANGE, ...change })).toThrow(message))
