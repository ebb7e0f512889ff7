import { expect, test } from 'vitest'
import { numberFormat } from './numberFormat.ts'

const of = (code: string) => numberFormat(164, new Map([[164, code]]))

test('built-in formats by number (ECMA-376, 18.8.30)', () => {
  expect([0, 2, 9, 14, 20, 21, 22, 45, 46].map((id) => numberFormat(id, new Map()).is)).toEqual([
    'number',
    'number',
    'number',
    'date',
    'clock',
    'clock',
    'date',
    'clock',
    'elapsed',
  ])
})

test('codes of the file', () => {
  expect(of('[m]:ss')).toEqual({ is: 'elapsed', seconds: true })
  expect(of('hh:mm')).toEqual({ is: 'clock', seconds: false })
  expect(of('yyyy\\-mm\\-dd hh:mm').is).toBe('date')
  expect(of('[Red]0.00" s"').is).toBe('number')
  expect(of('0.0\\ "days"').is).toBe('number')
  expect(of('mmm').is).toBe('date')
})
