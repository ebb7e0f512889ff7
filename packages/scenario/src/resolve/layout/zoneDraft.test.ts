import { expect, test } from 'vitest'
import { createReport } from '../../problems/report.ts'
import { readSource } from '../../text/source.ts'
import { type Context, child, childNamed } from '../context.ts'
import { findZone, own, type ZoneDraft } from './zoneDraft.ts'

function setUp(text: string) {
  const report = createReport(text)
  const root = readSource(text, report)!
  const context: Context = { report, files: null, origins: new Map(), zoneIndex: new Map([['A', 0]]), tables: [], takenOut: new Set() }
  const zone: ZoneDraft = {
    name: 'A',
    generated: false,
    inLoop: true,
    putIn: false,
    divert: 'first',
    merge: { kind: 'waiting' },
    at: root,
    sources: [childNamed(root, 'byName')!, childNamed(root, 'inList')!],
    length: 1,
    sensor: 0,
    release: 'single',
    turn: null,
    transfer: null,
  }
  return { report, root, context, zone }
}

test('a zone is found by name; another name is a finding, unless no zones are known', () => {
  const { report, root, context, zone } = setUp('byName: {}\ninList: {}\nzone: A\nother: B\n')
  expect(findZone(context, child(root, 'zone'), [zone])).toBe(0)
  expect(findZone(context, childNamed(root, 'other'), [])).toBeNull()
  expect(report.problems()).toEqual([])
  expect(findZone(context, childNamed(root, 'other'), [zone])).toBeNull()
  expect(report.problems()[0]?.code).toBe('E_UNKNOWN_ZONE')
})

test('the first place that has a key gives the own value', () => {
  const { zone } = setUp('byName: { speed: 1 m/s }\ninList: { speed: 2 m/s, length: 3 m }\n')
  expect(own(zone, 'speed')?.value).toBe('1 m/s')
  expect(own(zone, 'length')?.value).toBe('3 m')
  expect(own(zone, 'release')).toBeNull()
})
