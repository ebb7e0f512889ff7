import { describe, expect, test } from 'vitest'
import { loopLine } from '../builder/sketchedLine.ts'
import type { LineSpec } from '../spec.ts'
import { checkParts } from './physical.ts'

const { spec } = loopLine({
  zones: 4,
  zoneLength: 2,
  drive: { speed: 1 },
  carriers: { count: 2, length: 1 },
  stations: { all: { zone: 0, unload: 1, load: 1 } },
  end: 60,
})
const found = (line: Parameters<typeof checkParts>[0], longest: number | null = null): string[] =>
  checkParts(line, longest).map(({ place, zone, say }) => `${say([zone]).code} ${place.part} ${place.index} ${place.key}`.trim())
const zones = (change: Partial<LineSpec['zones'][number]>): LineSpec => ({
  ...spec,
  zones: spec.zones.map((zone) => ({ ...zone, ...change })),
})
const carriers = (change: Partial<LineSpec['carriers']>): LineSpec => ({ ...spec, carriers: { ...spec.carriers, ...change } })
const exitClear = { liftSeconds: 1, lowerSeconds: 1, enterOnlyIfExitClear: true }

test('nothing about a sound line', () => expect(found(spec)).toEqual([]))

describe.each<[string, LineSpec, string]>([
  ['a carrier of unknown length', carriers({ lengthMetres: null }), 'E_CARRIER_SIZE carriers 0'],
  ['a carrier longer than a zone', carriers({ lengthMetres: 3 }), 'E_CARRIER_LONG carriers 0 length'],
  ['no hole', carriers({ count: 4 }), 'E_CARRIERS_FILL carriers 0 count'],
  ['a sensor before the whole carrier', zones({ sensorBeforeStopMetres: 1 }), 'E_SENSOR zone 0 sensorBeforeStop'],
  ['no place to wait', zones({ transfer: exitClear }), 'E_ALL_EXIT_CLEAR zone 0'],
  ['a start in a store without a way', carriers({ start: 'store' }), 'E_STORE_WITHOUT_WAY carriers 0 start'],
  [
    'a path without speed',
    { ...spec, paths: spec.paths.map((path) => ({ ...path, speedMetresPerSecond: null })) },
    'E_SPEED_NEEDED path 0 speed',
  ],
  [
    'a path without length',
    { ...spec, paths: spec.paths.map((path) => ({ ...path, distanceMetres: null })) },
    'E_ZONE_LENGTH path 0 length',
  ],
  ['a zone without a way out', { ...spec, paths: spec.paths.slice(1) }, 'W_ZONE_WITHOUT_WAY paths 0 from'],
  ['no station that loads', { ...spec, stations: [{ ...spec.stations[0]!, load: null }] }, 'W_NO_LOAD stations 0 load'],
])('%s', (_, line, finding) => {
  test('is found', () => expect(found(line)).toContain(finding))
})

test('what is not known is wrong already, and nothing more is said of it', () => {
  const unknown = { ...spec, zones: spec.zones.map((zone) => ({ ...zone, lengthMetres: undefined, transfer: undefined })), carriers: null }
  expect(found(unknown)).toEqual([])
})

test('a clear longer than the longest stay', () => {
  // 1 m at 1 m/s and 0.1 s of reaction: 1.1 s
  expect(found(spec, 1.2)).toEqual([])
  expect(found(spec, 1)).toEqual(['W_CLEAR_LONG path 0 clear'])
})
