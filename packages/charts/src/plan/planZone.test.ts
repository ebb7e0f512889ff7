import { expect, test } from 'vitest'
import { carriersOn, keyedTitle, type PlanZone, zoneWords } from './planZone.ts'

const bare: PlanZone = { name: 'Z03', lengthMetres: 1, turn: null, transfer: false, station: null, value: null, label: null }

test('a key stands before the title, once', () => {
  expect(keyedTitle({ key: 'S5', title: 'Fan deck', duties: [] })).toBe('S5 Fan deck')
  expect(keyedTitle({ key: 'mend', title: 'mend', duties: [] })).toBe('mend')
  expect(keyedTitle({ title: 'Fan deck', duties: [] })).toBe('Fan deck')
})

test('what a pointer reads: all that the cell stands for, the number where it means something', () => {
  const zone = { ...bare, station: { key: 'S2', title: 'Fit', duties: [] }, transfer: true, carrier: '7', label: '62' }
  expect(zoneWords(zone, 'share, %')).toBe('Z03, S2 Fit, transfer, carrier 7: 62 (share, %)')
  expect([zoneWords(zone, null), zoneWords(bare, 'share, %')]).toEqual(['Z03, S2 Fit, transfer, carrier 7', 'Z03'])
})

test('carriers at an instant in one sentence; none where none is drawn', () => {
  expect(carriersOn([{ ...bare, carrier: '3' }, bare, { ...bare, name: 'Z05', carrier: '1' }])).toEqual(['Carriers: 3 in Z03, 1 in Z05.'])
  expect(carriersOn([bare])).toEqual([])
  expect(carriersOn([{ ...bare, starts: true }, bare, { ...bare, name: 'Z05', starts: true }])).toEqual([
    'Carriers at the start in Z03, Z05.',
  ])
})
