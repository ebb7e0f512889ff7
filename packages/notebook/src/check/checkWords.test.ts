import type { Scenario } from '@loopwright/scenario'
import { describe, expect, test } from 'vitest'
import { read } from '../../../../tests/helpers/checkedLine.ts'
import { EXACT_LINE, OPEN_LINE, SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import {
  breaksSentence,
  carriersSentence,
  lineSentence,
  tablesSentence,
  variationsSentence,
  verdictSentence,
  windowSentence,
  zoneNamesSentence,
} from './checkWords.ts'

const small = read(SMALL_LINE)
const exact = read(EXACT_LINE)
const open = read(OPEN_LINE)
const withLine = (scenario: Scenario, line: Partial<Scenario['line']>): Scenario => ({ ...scenario, line: { ...scenario.line, ...line } })

test('whether it can be simulated, and how many warnings there are', () => {
  expect(verdictSentence(small.scenario, 'a.yaml', 0)).toBe('“Small loop” (a.yaml) can be simulated: no errors, no warnings.')
  expect(verdictSentence({ name: '' }, 'a.yaml', 1)).toBe('a.yaml can be simulated: no errors, 1 warning.')
})

describe('the line', () => {
  test('a loop without transfers', () => {
    expect(lineSentence(small.scenario, small.facts)).toBe('Loop: 10 zones, 10 m; a carrier may wait in each of them. No transfers.')
    expect(zoneNamesSentence(small.notes)).toBe('The zones are called Z01 … Z10.')
  })

  test('with transfers, all or some of them entered only when the exit is clear', () => {
    const corners = SMALL_LINE.replace(
      'stations:',
      'corners: { zones: [Z03, Z04, Z09, Z10], turn: right, lift: 2 s, lower: 1 s, enterOnlyIfExitClear: true }\nstations:',
    )
    const { scenario, facts } = read(corners)
    expect(lineSentence(scenario, facts)).toBe(
      'Loop: 10 zones, 10 m; a carrier may wait in 6 of them. 4 transfers (Z03, Z04, Z09, Z10), entered only when the exit is clear.',
    )
    const some = { ...facts, exitClearTransfers: ['Z03'] }
    expect(lineSentence(scenario, some)).toContain('(Z03, Z04, Z09, Z10); entered only when the exit is clear: Z03.')
    expect(lineSentence(scenario, { ...facts, exitClearTransfers: [] })).toContain('(Z03, Z04, Z09, Z10).')
  })

  test('an open line is called so, and a line of several ways is neither', () => {
    expect(lineSentence(open.scenario, open.facts)).toBe(
      'Open line: 4 zones, 6 m, 6 paths; carriers come from a store and go back to it. A carrier may wait in each of the zones. No transfers.',
    )
    const { line } = small.scenario
    const two = withLine(small.scenario, { paths: [...line.paths, { ...line.paths[3]!, to: 2 }] })
    expect(lineSentence(two, { ...small.facts, law: null })).toBe(
      'Line: 10 zones, 10 m, 11 paths. A carrier may wait in each of the zones. No transfers.',
    )
  })

  test('zone names that the file gives are not told again', () => {
    const names = { zoneNames: ['in', 'Z02', 'Z03'], generatedZoneNames: ['Z02', 'Z03'] }
    expect(zoneNamesSentence({ ...names, generatedZoneNames: [] })).toBeNull()
    expect(zoneNamesSentence(names)).toBe('Zones without a name in the file are called Z02, Z03.')
  })
})

test('carriers, by the rule of their start', () => {
  expect(carriersSentence(small.scenario)).toBe('4 carriers, 0.8 m long and 0.8 m wide, spread evenly at the start.')
  expect(carriersSentence(open.scenario)).toMatch(/^1 carrier, 1 m long.*, in the store at the start\.$/)
  const carriers = small.scenario.line.carriers
  expect(carriersSentence(withLine(small.scenario, { carriers: { ...carriers, start: 'packed' } }))).toContain(
    'packed from the first zone on',
  )
  expect(carriersSentence(withLine(small.scenario, { carriers: { ...carriers, start: [0, 1, 2, 3], widthMetres: null } }))).toBe(
    '4 carriers, 0.8 m long, each at its named zone at the start.',
  )
})

describe('what is counted', () => {
  test('a shift of a calendar, by its hours', () => {
    expect(windowSentence(small.scenario, small.notes)).toBe(
      'Counted: the second shift, 08:00 to 10:00 (2 h, 110 min without breaks), after 2 h of warm-up. The plan is 70 per shift.',
    )
    expect(breaksSentence(small.scenario, small.notes)).toBe('Break in it: 10 min at 09:00; the conveyor goes on.')
    expect(breaksSentence(withLine(small.scenario, { conveyorDuringBreaks: false }), small.notes)).toContain('the conveyor stops too')
  })

  test('several shifts have no one hour to begin and end', () => {
    const { scenario, notes } = read(SMALL_LINE.replace('second shift', 'shifts 2 to 4'))
    expect(windowSentence(scenario, notes)).toBe(
      'Counted: shifts 2 to 4 (6 h, 5 h 30 min without breaks), after 2 h of warm-up. The plan is 70 per shift.',
    )
  })

  test('a given length, no plan, no breaks', () => {
    expect(windowSentence(exact.scenario, exact.notes)).toBe('Counted: 60 min after 10 min of warm-up. No plan is given.')
    expect(windowSentence(withLine(exact.scenario, { window: { warmupSeconds: 0, endSeconds: 60 } }), exact.notes)).toContain(
      '60 s from the start',
    )
    expect(breaksSentence(exact.scenario, exact.notes)).toBeNull()
    const breaks = [
      { startSeconds: 1200, lengthSeconds: 600 },
      { startSeconds: 2400, lengthSeconds: 300 },
    ]
    expect(breaksSentence(withLine(exact.scenario, { breaks }), exact.notes)).toMatch(
      /^Breaks in it: 10 min after 10 min, 5 min after 30 min;/,
    )
    const days = read(SMALL_LINE.replace(/judge: .*/, 'judge: shifts 2 to 4'))
    expect(breaksSentence(days.scenario, days.notes)).toBe('Breaks in it: 2 times 10 min at 09:00, 10 min at 07:00; the conveyor goes on.')
  })
})

test('variations by name', () => {
  expect(variationsSentence({ variations: ['train', 'slow'] })).toBe('Variations in the file: train, slow.')
  expect(variationsSentence({ variations: [] })).toBeNull()
})

test('rows of a table: how many are taken, left out and empty', () => {
  const table = { path: 'p', file: 'study.csv', column: 'wiring', rows: 120, taken: 40, others: 78, empty: 2, pooled: [] }
  expect(tablesSentence({ tables: [] })).toBeNull()
  expect(tablesSentence({ tables: [table] })).toBe(
    'Observed times: 40 of 120 rows of the column wiring of study.csv (78 others left out, 2 without a time).',
  )
})
