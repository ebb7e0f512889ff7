import { expect, test } from 'vitest'
import { loopLine } from '../builder/sketchedLine.ts'
import { checkFlow } from './flow.ts'

test('a station that no product comes to, and one at which nothing is left to do, each by its own finding', () => {
  const { spec } = loopLine({
    zones: 6,
    zoneLength: 2,
    drive: { speed: 1 },
    carriers: { count: 1, length: 1 },
    end: 60,
    stations: {
      in: { zone: 'Z01', load: 10 },
      fit: { zone: 'Z02', work: { fit: 10 } },
      again: { zone: 'Z03', work: { fit: 10 } },
      out: { zone: 'Z04', unload: 10 },
      late: { zone: 'Z05', work: { fit: 10 } },
    },
  })
  expect(checkFlow(spec).map((finding) => finding.say([]).code)).toEqual(['W_STATION_UNREACHED', 'W_NOTHING_LEFT'])
})
