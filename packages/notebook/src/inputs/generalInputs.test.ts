import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { generalInputs } from './generalInputs.ts'

const said = (text: string, ...changes: [string, string][]): Record<string, string> => {
  const { line } = readScenario(scenarioText(['', text], ...changes)).scenario!
  return Object.fromEntries(generalInputs(line)?.rows.map(({ cells }) => cells) ?? [])
}

test('a plain loop has nothing of it', () => expect(said('')).toEqual({}))

test('ways: several out and in, for some only, by hand', () => {
  const ways = said(
    'zones: { R1: { length: 1 m }, Z05: { divert: free }, Z06: { merge: { priority: [R1] } } }\npaths: [{ from: Z05, to: R1, takes: { load: loaded } }, { from: R1, to: Z06, pull: Fit, move: 6 s }]',
  )
  expect(ways).toEqual({
    'Several ways out': 'Z05: the first free way',
    'Several ways in': 'Z06: first from R1',
    'Ways for some only': 'Z05 to R1: loaded carriers',
    'Pull by hand': 'R1 to Z06, 6 s, by Fit',
  })
})

test('people, goods, sections, safety stops and crews', () => {
  const rows = said(
    'operators: { anna: { stations: [Load, Fit] } }\nwalks: [{ between: [Load, Fit], lasts: 8 s }]\nsupply: { every: exponential 60 s, queue: 3 }\ninspections: { fit: 3 % }\nrework: { fit: again }\nsections: { front: [Z01, Z04] }\nrepairCrews: 1',
    ['Z08,', 'Z08, receiver: { cycle: 30 s },'],
    ['Z04,', 'Z04, safetyStop: { chance: 1 %, reset: 20 s },'],
  )
  expect(rows).toMatchObject({
    'Operator anna': 'Load, Fit; starts at Load',
    Walks: 'Load to Fit 8 s; others 0 s',
    'Receiver of Unload': '30 s for one product, 0 places before it',
    'Inspection fit': 'rejects 3 %',
    'Rework fit': 'again for rejected products',
    'Section front': 'Z01, Z04',
    'Safety stop at Fit': '1 % of moves, reset after 20 s',
    'Repair crews': '1',
  })
  expect(rows['Products come to the line']).toContain('3 wait at most')
})
