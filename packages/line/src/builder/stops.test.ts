import { expect, test } from 'vitest'
import { loopLine } from './sketchedLine.ts'
import type { StopSketch } from './sketch.ts'

const transfer = { lift: 1, lower: 1 }
const line = loopLine({
  zones: [{}, { transfer }, {}, { transfer }],
  zoneLength: 2,
  drive: { speed: 1 },
  carriers: { count: 1, length: 1, width: 1 },
  stations: { S1: { zone: 'Z01', load: 5, unload: 5 } },
  end: 60,
})
const parts = (at: StopSketch['at']): string[] =>
  line.with({ stops: { jam: { at, after: 60, lasts: 5 } } }).spec.breakdowns.map(({ name, part }) => `${name}: ${part.kind} ${part.index}`)

test.each<[StopSketch['at'], string[]]>([
  ['S1', ['jam: station 0']],
  ['Z03', ['jam: zone 2']],
  ['zone Z02', ['jam: zone 1']],
  ['transfer Z04', ['jam: transfer 3']],
  ['line', ['jam: section 0']],
  ['every transfer', ['jam Z02: transfer 1', 'jam Z04: transfer 3']],
  [
    ['S1', 'Z01'],
    ['jam S1: station 0', 'jam Z01: zone 0'],
  ],
])('%j', (at, told) => expect(parts(at)).toEqual(told))

test('a zone with a transfer can be two parts', () => expect(() => parts('Z02')).toThrow('"Z02" can mean more than one part'))

test('sections in the order of their zones, and breaks as they are said', () => {
  const { spec } = line.with({ sections: { left: ['Z03', 0], right: ['Z02'] }, breaks: [{ after: 10, lasts: 5 }] })
  expect(spec.sections).toEqual([
    { name: 'left', zones: [0, 2] },
    { name: 'right', zones: [1] },
  ])
  expect(spec.breaks).toEqual([{ startSeconds: 10, lengthSeconds: 5 }])
})
