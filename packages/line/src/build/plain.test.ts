import { expect, test } from 'vitest'
import { givenLoop } from '../../../../tests/helpers/boundLoops.ts'
import { PLAIN_LINE, PLAIN_PATH, PLAIN_STATION, PLAIN_ZONE, wholeLine } from './plain.ts'
import { simulate } from '../simulate.ts'

test('a line of plain parts is one that runs', () => {
  const spec = givenLoop(4, [[2, 10]], 1, 1)
  const plain = {
    ...spec,
    ...PLAIN_LINE,
    sections: wholeLine(4),
    zones: spec.zones.map((zone) => ({ ...zone, ...PLAIN_ZONE })),
    paths: spec.paths.map((path) => ({ ...path, ...PLAIN_PATH })),
    stations: spec.stations.map((station) => ({ ...station, ...PLAIN_STATION })),
  }
  expect(simulate(plain, { seed: 'plain', replication: 0 })).toEqual(simulate(spec, { seed: 'plain', replication: 0 }))
})

test('one section holds every zone', () => {
  expect(wholeLine(3)).toEqual([{ name: 'line', zones: [0, 1, 2] }])
})
