import { law } from '@loopwright/line/bounds'
import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { shownView, type TableCell } from '../cells/cell.ts'
import { assumptionCells } from './assumptions.ts'

const YAML = `
format: 1
name: Lid line
question: How many carriers does the lid line need?
plan: 50 per clock hour
warmup: 1 h
length: 8 h
drive: { speed: 15 m/min, acceleration: 0.4 m/s², reaction: 0.15 s }
carriers: { count: 6, length: 0.8 m, width: 0.8 m }
loop: 10 zones of 1 m
corners: { zones: [Z04, Z09], turn: right, lift: 2 s, lower: 1.5 s, enterOnlyIfExitClear: true }
products: { mix: levelled, variants: { red: 75 %, blue: 25 % } }
stations:
  S1: { name: Load, zone: Z01, unload: { takeOff: 12 s }, load: { place: 20 s ± 10 % } }
  S2: { name: Fit lid, zone: Z05, work: { fitLid: { cv: 15 %, mean: { red: 40 s, blue: 60 s } } } }
stops:
  screwdriver: { at: S2, after: exponential 90 min, lasts: lognormal 4 min ± 60 % }
`

function tables(): Record<string, string> {
  const { scenario, problems } = readScenario(YAML)
  if (scenario === null) throw new Error(JSON.stringify(problems))
  const cells = assumptionCells(scenario, { law: law(scenario.line), lawSeconds: 8 * 3600 }, null)
  const said = (cell: TableCell): string =>
    shownView(cell.views)
      .rows.map((row) => row.cells.join(' '))
      .join('\n')
  return Object.fromEntries(cells.flatMap((cell) => (cell.kind === 'table' ? [[cell.id, said(cell)]] : [])))
}

test('every input stands in a table, in the units of the shop floor', () => {
  const said = tables()
  expect(Object.keys(said)).toEqual(['inputs-time', 'inputs-line', 'inputs-stations', 'inputs-variants', 'inputs-stops', 'inputs-law'])
  expect(said['inputs-line']).toMatch(/Zones +10, of which 2 are transfers/)
  expect(said['inputs-line']).toMatch(/Speed +15 m\/min/)
  expect(said['inputs-line']).toMatch(/Acceleration and braking +0\.4 m\/s²/)
  expect(said['inputs-line']).toMatch(/Control reaction +0\.15 s/)
  expect(said['inputs-line']).toMatch(/Transfer, lower +1\.5 s/)
  expect(said['inputs-line']).toMatch(/Carrier, length × width +0\.8 m × 0\.8 m|Carrier, length × width +800 mm × 800 mm/)
  expect(said['inputs-time']).toMatch(/Counted from … to +60 min … 540 min after the start, 480 min/)
  expect(said['inputs-time']).toMatch(/Plan +50 per clock hour/)
  expect(said['inputs-time']).toMatch(/Plan in the time counted +400 units/)
  expect(said['inputs-stops']).toMatch(/screwdriver +S2 Fit lid +while it works +mean 90 min, exponential +mean 4 min, cv 60 %, lognormal/)
})

test('mean times are those of the mix: three of four red', () => {
  const said = tables()
  expect(said['inputs-stations']).toMatch(/S2 Fit lid +Z05 +work +45 +15 %/)
  expect(said['inputs-variants']).toMatch(/red +75 % +12 +20 +40/)
  expect(said['inputs-variants']).toMatch(/blue +25 % +12 +20 +60/)
})

test('the law names the slowest exchange: 60 s of work would be 45 s in the mean, so it is at the fitting station', () => {
  expect(tables()['inputs-law']).toMatch(/Slowest exchange +\d+\.\d s at S2 Fit lid/)
})
