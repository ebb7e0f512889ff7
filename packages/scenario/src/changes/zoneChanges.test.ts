import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../read.ts'
import { zoneChanges } from './zoneChanges.ts'

const read = (...changes: [string, string][]) => readScenario(scenarioText(...changes)).scenario!
const base = read()

test('without what was put in it is the same line again, by the same names', () => {
  const longer = read(['', 'putIn: [{ before: Fit, zones: 2 }, { after: Z09 }]'])
  const found = zoneChanges(base, longer)!
  expect(found.runs).toEqual([
    { kind: 'put in', zones: ['Z03a', 'Z03b'], before: 'Fit' },
    { kind: 'put in', zones: ['Z09a'], before: 'Z10' },
  ])
  expect(found.before).toEqual(base)
  expect(found.after.line).toEqual(base.line)
})

test('the other way round they are taken out', () => {
  const longer = read(['', 'putIn: { before: Fit, zones: 2 }'])
  expect(zoneChanges(longer, base)!.runs).toEqual([{ kind: 'taken out', zones: ['Z03a', 'Z03b'], before: 'Fit' }])
})

test('stops at every zone go with their zones', () => {
  const stops: [string, string] = ['', 'stops: { jam: { at: every zone, after: 1 h, lasts: 1 min } }']
  const found = zoneChanges(read(stops), read(stops, ['10 zones', '12 zones'], ['Z04', 'Z06'], ['Z08', 'Z10']))!
  expect(found.runs).toEqual([{ kind: 'put in', zones: ['Z04', 'Z05'], before: 'Fit' }])
  expect(found.after.line).toEqual(found.before.line)
})

test('the same zones, open lines, and loops that differ by more than plain zones are left to their values', () => {
  expect(zoneChanges(base, read(['Z04', 'Z05']))).toBeNull()
  expect(zoneChanges(base, read(['10 zones of 1 m', '12 zones of 2 m']))).toBeNull()
  expect(zoneChanges(base, read(['', 'putIn: { before: Fit }'], ['', 'paths: [{ from: Z02, to: Z05 }]']))).toBeNull()
})
