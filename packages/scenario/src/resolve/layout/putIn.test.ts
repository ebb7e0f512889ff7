import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'
import { applyVariation } from '../../changes/variations.ts'
import { writeScenario } from '../../write/write.ts'

const read = (...changes: [string, string][]) => {
  const { scenario, problems, notes } = readScenario(scenarioText(...changes))
  const line = scenario?.line
  return {
    scenario,
    codes: problems.map(({ code }) => code),
    zones: line?.zones.map(({ name }) => name).join(' '),
    at: line?.stations.map(({ name, zone }) => `${name} ${line.zones[zone]!.name}`).join(', '),
    made: notes?.generatedZoneNames.length,
  }
}
const put = (text: string): [string, string] => ['', text]
const AT = 'Load Z01, Fit Z04, Unload Z08'

describe('zones put in', () => {
  test('are called after the zone before them; stations stay in their zones', () => {
    const { zones, at, codes, made } = read(put('putIn: { before: Fit, zones: 2 }'))
    expect(codes).toEqual([])
    expect(zones).toBe('Z01 Z02 Z03 Z03a Z03b Z04 Z05 Z06 Z07 Z08 Z09 Z10')
    expect(at).toBe(AT)
    expect(made).toBe(12)
  })
  test('one, behind a zone, of a length of its own; before the first zone they close the loop', () => {
    const { zones, scenario } = read(put('putIn: [{ after: Z08, length: 2 m }, { before: Z01 }, { before: Load }]'))
    expect(zones).toBe('Z01 Z02 Z03 Z04 Z05 Z06 Z07 Z08 Z08a Z09 Z10 Z10a Z10b')
    expect(scenario?.line.zones[8]?.lengthMetres).toBe(2)
    expect(scenario?.line.paths[8]).toMatchObject({ from: 8, to: 9, distanceMetres: 1 })
    expect(scenario?.line.paths[12]).toMatchObject({ from: 12, to: 0 })
  })
  test('have the length of the zone beside them, wherever it is given, unless they say their own', () => {
    const listed: [string, string] = ['loop: 10 zones of 1 m', 'loop: [3 × 1 m, { length: 3 m }, 6 × 1 m]']
    const lengths = (...changes: [string, string][]) =>
      read(listed, put('putIn: { before: Fit, zones: 2 }'), ...changes)
        .scenario?.line.zones.slice(2, 6)
        .map(({ lengthMetres }) => lengthMetres)
    expect(lengths()).toEqual([1, 3, 3, 3])
    expect(lengths(put('zones: { Z03b: { length: 2 m }, Z04: { length: 4 m } }'))).toEqual([1, 4, 2, 4])
  })
  test('change nothing else: without them again it is the same line', () => {
    const base = read().scenario!.line
    const both = read(put('putIn: { before: Fit, zones: 2 }'), put('takeOut: [Z03a, Z03b]')).scenario!.line
    expect(both).toEqual(base)
  })
  test('corners, stops and paths that name zones keep them', () => {
    const { scenario, codes } = read(
      put('putIn: { before: Fit, zones: 2 }'),
      put('corners: { zones: [Z01, Z03, Z06, Z08], turn: right, lift: 1 s, lower: 1 s }'),
      put('stops: { jam: { at: [Z05, transfer Z06], after: 1 h, lasts: 1 min } }'),
      put('paths: [{ from: Z05, move: 7 s }]'),
      ['Load: { zone: Z01', 'Load: { zone: Z02'],
      ['Unload: { zone: Z08', 'Unload: { zone: Z07'],
    )
    const line = scenario!.line
    expect(codes).toEqual(['W_CORNERS_OPEN'])
    expect(line.zones.filter(({ transfer }) => transfer !== null).map(({ name }) => name)).toEqual(['Z01', 'Z03', 'Z06', 'Z08'])
    expect(line.breakdowns.map(({ name, part }) => [name, line.zones[part.index]!.name])).toEqual([
      ['jam Z05', 'Z05'],
      ['jam Z06', 'Z06'],
    ])
    expect(line.paths.find(({ moveSeconds }) => moveSeconds !== null)?.from).toBe(line.zones.findIndex(({ name }) => name === 'Z05'))
  })
  test('the complete form reads back', () => {
    const { scenario } = read(put('putIn: { before: Fit, zones: 2 }'))
    expect(readScenario(writeScenario(scenario!)).scenario).toEqual(scenario)
  })
})

test('zones taken out are gone, with their own values', () => {
  const { zones, at, codes } = read(put('takeOut: [Z02, Z10]'), put('zones: { Z02: { length: 2 m } }'))
  expect(codes).toEqual([])
  expect(zones).toBe('Z01 Z03 Z04 Z05 Z06 Z07 Z08 Z09')
  expect(at).toBe(AT)
})

test('a variation says it in one line', () => {
  const text = scenarioText(put('variations: { longer: { putIn: { before: Fit, zones: 2 } }, shorter: { takeOut: [Z05] } }'))
  expect(readScenario(text).problems).toEqual([])
  expect(readScenario(applyVariation(text, 'longer').text!).scenario!.line).toEqual(
    read(put('putIn: { before: Fit, zones: 2 }')).scenario!.line,
  )
  expect(readScenario(applyVariation(text, 'shorter').text!).scenario!.line.zones).toHaveLength(9)
})

test('what does not fit is told', () => {
  expect(read(put('putIn: { zones: 2 }')).codes).toEqual(['E_NEITHER'])
  expect(read(put('putIn: { before: Fitt }')).codes).toEqual(['E_UNKNOWN_PLACE'])
  expect(read(put('takeOut: [Z04]')).codes).toEqual(['E_ZONE_TAKEN_OUT'])
  expect(read(put('takeOut: [Z05]'), put('stops: { jam: { at: Z05, after: 1 h, lasts: 1 min } }')).codes).toEqual(['E_ZONE_TAKEN_OUT'])
  expect(read(put('takeOut: [Z11]')).codes).toEqual(['E_UNKNOWN_ZONE'])
  expect(read(put('putIn: { before: Fit }'), put('paths: [{ from: Z03, to: Z04, move: 5 s }]')).codes).toEqual(['E_PUT_IN_PATH'])
})
