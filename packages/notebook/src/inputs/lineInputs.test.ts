import type { LineSpec } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { lineInputs } from './lineInputs.ts'

const YAML = `
format: 1
name: Straight
question: How many?
warmup: 0 s
length: 1 h
drive: { speed: 15 m/min, reaction: 0.1 s }
carriers: { count: 2, length: 0.8 m }
loop: 6 zones of 1 m
stations:
  S1: { zone: Z01, unload: { takeOff: 12 s }, load: { place: 20 s } }
`

function said(change: (line: LineSpec) => LineSpec = (line) => line): Record<string, string> {
  const { scenario, problems } = readScenario(YAML)
  if (scenario === null) throw new Error(JSON.stringify(problems))
  return Object.fromEntries(lineInputs(change(scenario.line)).rows.map(({ cells }) => [cells[0]!, cells[1]!]))
}

test('a loop without corners names no transfer times', () => {
  const rows = said()
  expect(rows.Zones).toBe('6, of which 0 are transfers (90°)')
  expect(rows['Loop length']).toBe('6 m')
  expect(rows['Acceleration and braking']).toBe('no ramps')
  expect(Object.keys(rows).filter((name) => name.startsWith('Transfer'))).toEqual([])
})

test('release is told zone by zone where zones differ', () => {
  expect(said().Release).toBe('single: a carrier starts when the zone ahead is clear')
  const train = (places: number) => (line: LineSpec) => ({
    ...line,
    staggerSeconds: 0.3,
    zones: line.zones.map((zone, index) => ({ ...zone, release: index < places ? ('train' as const) : ('single' as const) })),
  })
  expect(said(train(6)).Release).toBe('train, stagger 0.3 s')
  expect(said(train(4)).Release).toBe('train, stagger 0.3 s in 4 zones; single in 2')
})

test('a span where values differ; how it starts', () => {
  const rows = said((line) => ({
    ...line,
    zones: line.zones.map((zone, index) => ({ ...zone, lengthMetres: index === 0 ? 1.5 : 1 })),
    carriers: { ...line.carriers, start: 'packed' },
  }))
  expect(rows['Zone length']).toBe('1 m to 1.5 m')
  expect(rows.Start).toBe('empty carriers, packed from the first zone on')
  expect(said((line) => ({ ...line, carriers: { ...line.carriers, start: [0, 3] } })).Start).toBe('empty carriers, in 2 zones named')
})

test('given move times are named', () => {
  const rows = said((line) => ({ ...line, paths: line.paths.map((path) => ({ ...path, moveSeconds: { kind: 'constant', value: 5 } })) }))
  expect(rows['Given move times']).toBe('6 paths: 5 s')
})
