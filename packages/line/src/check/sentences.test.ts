import { expect, test } from 'vitest'
import { sentences } from './sentences.ts'

test('a number beyond the last zone is no slip of the pen', () => {
  const known = ['Z01', 'Z02', 'Z03', 'Z04', 'Z05', 'Z06', 'Z07']
  expect(sentences.unknownZone('Z-07', 'Z07', known).fix).toBe('did you mean "Z07"?')
  expect(sentences.unknownZone('Z17', 'Z07', known).fix).toBe('zones are "Z01" … "Z07"')
})

test('a sentence has its code and severity', () => {
  expect(sentences.noLoad()).toMatchObject({ code: 'W_NO_LOAD', severity: 'warning' })
  expect(sentences.zoneTaken('Z01', 'S1')).toMatchObject({ code: 'E_ZONE_TAKEN', severity: 'error' })
})
