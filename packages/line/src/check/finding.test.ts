import { expect, test } from 'vitest'
import { at, type Finding, found, tellTogether } from './finding.ts'
import { sentences } from './sentences.ts'

const length = (index: number, zone: string): Finding => ({
  place: at('path', index, 'length'),
  rule: 'length',
  zone,
  say: sentences.zoneWithoutLength,
})

test('findings of one rule at one place are told together, others by themselves; where there is no place nothing is told', () => {
  const findings = [length(0, 'Z1'), length(1, 'Z2'), length(2, 'Z3'), found(at('stations'), sentences.noLoad())]
  const told = tellTogether(findings, ({ part, index }) => (part === 'path' && index === 1 ? null : { at: part, key: part }))
  expect(told.map(({ at: place, sentence }) => `${place}: ${sentence.message}`)).toEqual([
    'path: the length of zones "Z1" and "Z3" is not known, and the way in needs it',
    'stations: no station loads products',
  ])
})
