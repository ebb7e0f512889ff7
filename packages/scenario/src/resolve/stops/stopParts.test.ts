import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

const CORNERS: [string, string] = ['', 'corners: { zones: [Z03, Z06], turn: left, lift: 1 s, lower: 1 s }']

function parts(at: string, ...changes: [string, string][]) {
  const { scenario, problems } = readScenario(
    scenarioText(CORNERS, ...changes, ['', `stops: { fault: { at: ${at}, after: exponential 9 h, lasts: 60 s } }`]),
  )
  return (
    scenario?.line.breakdowns.map((one) => `${one.name}: ${one.part.kind} ${'index' in one.part ? one.part.index : ''}`.trim()) ??
    problems.map((problem) => problem.code)
  )
}

test.each([
  ['Fit', ['fault: station 1']],
  ['station Fit', ['fault: station 1']],
  ['{ station: Fit }', ['fault: station 1']],
  ['Z05', ['fault: zone 4']],
  ['zone Z03', ['fault: zone 2']],
  ['transfer Z03', ['fault: transfer 2']],
  ['{ transfer: Z03 }', ['fault: transfer 2']],
  ['line', ['fault: section 0']],
  ['{ line: whole }', ['fault: section 0']],
  ['every transfer', ['fault Z03: transfer 2', 'fault Z06: transfer 5']],
  ['every station', ['fault Load: station 0', 'fault Fit: station 1', 'fault Unload: station 2']],
  ['[Fit, transfer Z06, line]', ['fault Fit: station 1', 'fault Z06: transfer 5', 'fault line: section 0']],
  ['[Fit]', ['fault Fit: station 1']],
])('%s', (at, expected) => {
  expect(parts(at)).toEqual(expected)
})

test('every zone', () => {
  expect(parts('every zone')).toHaveLength(10)
})

test.each([
  ['Z03', 'E_PART_AMBIGUOUS'],
  ['transfer Z02', 'E_NO_TRANSFER'],
  ['zone Z20', 'E_UNKNOWN_ZONE'],
  ['station Fitt', 'E_UNKNOWN_STATION'],
  ['Fitt', 'E_UNKNOWN_PART'],
  ['every day', 'E_UNKNOWN_PART'],
  ['[]', 'E_LIST_EMPTY'],
  ['{ station: Fit, zone: Z02 }', 'E_NEITHER'],
  ['5', 'E_TYPE'],
])('%s is refused', (at, code) => {
  expect(parts(at)).toEqual([code])
})

test('a station called like a zone, or like the line, must be named by its kind', () => {
  const change: [string, string] = ['  Fit:', '  line:']
  expect(parts('line', change)).toEqual(['E_PART_AMBIGUOUS'])
  expect(parts('station line', change)).toEqual(['fault: station 1'])
})
