import { type Figure, outputByHour, stationTimes, stoppedTime, throughput, unitsSpread, zoneOccupancy } from '@loopwright/charts'
import { drawingSvg } from '@loopwright/charts/draw'
import { describe, expect, test } from 'vitest'
import { baseLineCount, baseLineSweep, SHIFT } from '../../../packages/charts/src/examples/baseLine.ts'
import { collisions, textsIn } from './draw.ts'
import { mapStates } from '../../helpers/spent.ts'

const sweep = baseLineSweep()
const ten = baseLineCount(10)
const LONG = 'Pre-assembly of the refrigerant pipes and brazing under nitrogen'
const empty = { ...ten, units: [], mean: null, p10: null, p50: null, p90: null, meetsPlan: null, stations: [], zones: [], outputByHour: [], stoppedBy: [] }
const stuck = { ...baseLineCount(17), carriers: 18, units: [0, 0, 0], mean: { ...ten.mean!, mean: 0, low: 0, high: 0, halfWidth: 0 }, gridlocks: 3 }
const zero = { ...ten.p10!, point: 0 }

/** What a sweep may also be: short, stuck, without a plan, stopped early, of long names. */
const ODD: Readonly<Record<string, () => Figure>> = {
  'one count': () => throughput({ ...sweep, counts: [ten], answer: { ...sweep.answer!, best: 10 } }, { per: 'shift' }),
  'two counts': () => throughput({ ...sweep, counts: sweep.counts.slice(4, 6), answer: { ...sweep.answer!, best: 10 } }, { per: 'shift' }),
  'a count that stands still': () => throughput({ ...sweep, counts: [...sweep.counts, { ...stuck, p10: zero, p50: zero, p90: zero }] }),
  'every count stands still': () => throughput({ ...sweep, plan: null, answer: null, counts: [{ ...stuck, p10: zero, p50: zero, p90: zero }] }),
  'no replication yet': () => throughput({ ...sweep, answer: null, counts: sweep.counts.map(({ carriers }) => ({ ...empty, carriers })) }),
  'no plan': () => throughput({ ...sweep, plan: null }),
  'a plan out of reach': () => throughput({ ...sweep, plan: 900 }),
  'forty counts': () => throughput({ ...sweep, counts: Array.from({ length: 40 }, (_, index) => ({ ...ten, carriers: index + 5 })) }),
  'equal windows': () => unitsSpread({ ...ten, units: [330, 330, 330] }, SHIFT),
  'one window': () => unitsSpread({ ...ten, units: [330], p10: null, meetsPlan: null }, SHIFT),
  'windows far below the plan': () => unitsSpread({ ...ten, units: [10, 12, 13] }, SHIFT),
  'no window': () => unitsSpread(empty, SHIFT),
  'no stations': () => stationTimes(empty, SHIFT),
  'all ten states': () => stationTimes({ ...ten, stations: [{ ...ten.stations[0]!, shares: mapStates(ten.stations[0]!.shares, () => 0.1) }] }, SHIFT),
  'long station names': () => stationTimes({ ...ten, stations: ten.stations.map((each) => ({ ...each, title: LONG })) }, SHIFT),
  'no zones': () => zoneOccupancy(empty, SHIFT),
  'long zone names': () => zoneOccupancy(ten, { ...SHIFT, places: ten.zones.map(() => ({ station: LONG, transfer: false })) }),
  'a hundred zones': () => zoneOccupancy({ carriers: 10, zones: Array.from({ length: 100 }, (_, index) => ({ ...ten.zones[index % 22]!, name: `Z${index}` })) }, SHIFT),
  'no hour': () => outputByHour(empty, SHIFT),
  'a day and a half': () => outputByHour({ carriers: 10, outputByHour: Array.from({ length: 36 }, () => 40) }, { windowSeconds: 129_600 }),
  'less than an hour': () => outputByHour({ carriers: 10, outputByHour: [20] }, { windowSeconds: 1_500, plan: 21 }),
  'no cause': () => stoppedTime(empty, SHIFT),
  'long causes': () => stoppedTime({ ...ten, stoppedBy: ten.stoppedBy.map((each, index) => ({ ...each, cause: `${LONG} ${index}` })) }, SHIFT),
  'causes that never came': () => stoppedTime({ ...ten, stoppedBy: [{ cause: 'tester', seconds: 0, count: 0 }] }, SHIFT),
}

describe.each(Object.entries(ODD))('%s', (_, make) => {
  test.each([720, 328])('is drawn %d pixels wide, and nothing lies on anything', (widthPixels) => {
    const svg = drawingSvg(make().drawing, { widthPixels, look: 'light' })
    expect(svg.match(/NaN|undefined|Infinity/)).toBeNull()
    expect(collisions(textsIn(svg))).toEqual([])
  })
  test('says something about it', () => {
    const { finding, alt, readLine, table } = make()
    for (const text of [finding, alt, readLine, table.caption]) expect(text).toMatch(/^[A-Z0-9].*\.?$/)
    expect(`${finding}${alt}${readLine}`).not.toMatch(/NaN|undefined|null|Infinity/)
    for (const { cells } of table.rows) expect(cells.length).toBe(table.columns.length)
  })
})
