import { expect, test } from 'vitest'
import { loopLine } from '../builder/sketchedLine.ts'
import { checkGoods } from './goods.ts'

const COMMON = { zones: 6, zoneLength: 2, drive: { speed: 1 }, carriers: { count: 1, length: 1 }, end: 60 }
const GOODS = { supply: { every: 30 }, receiver: { cycle: 20 }, accepts: 'all' } as const

const told = (stations: Parameters<typeof loopLine>[0]['stations']): string[] =>
  checkGoods(loopLine({ ...COMMON, stations: { in: { zone: 'Z02', load: 10 }, out: { zone: 'Z06', unload: 10 }, ...stations } }).spec).map(
    (finding) => finding.say([]).message,
  )

test('goods are told of at a station that has nothing to do with them', () => {
  expect(told({ B: { zone: 'Z04', work: { fit: 5 }, ...GOODS } })).toEqual([
    'station "B" loads nothing: its "supply" changes nothing',
    'station "B" unloads nothing: its "receiver" changes nothing',
    'station "B" unloads nothing: its "accepts" changes nothing',
  ])
  expect(told({ B: { zone: 'Z04', unload: 5, ...GOODS } })).toEqual(['station "B" loads nothing: its "supply" changes nothing'])
  expect(told({ B: { zone: 'Z04', load: 5, supply: GOODS.supply } })).toEqual([])
  expect(told({ B: { zone: 'Z04', unload: 5, receiver: GOODS.receiver, accepts: 'rejected' } })).toEqual([])
})
