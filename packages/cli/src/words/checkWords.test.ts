import { readScenario, type Scenario } from '@loopwright/scenario'
import { lineFacts, workingSeconds } from '@loopwright/study'
import { describe, expect, test } from 'vitest'
import { EXACT_LINE, SMALL_LINE } from '../memoryShell.ts'
import {
  breaksSentence,
  carriersSentence,
  lawSentences,
  loopSentence,
  stationsTable,
  stopsTable,
  taktSentence,
  variantsTable,
  variationsSentence,
  windowSentence,
  zoneNamesSentence,
} from './checkWords.ts'

const read = (text: string) => {
  const { scenario, notes, problems } = readScenario(text, 'line.yaml')
  if (scenario === null || notes === null) throw new Error(JSON.stringify(problems))
  return { scenario, notes, facts: lineFacts(scenario.line) }
}
const small = read(SMALL_LINE)
const exact = read(EXACT_LINE)
const withLine = (scenario: Scenario, line: Partial<Scenario['line']>): Scenario => ({ ...scenario, line: { ...scenario.line, ...line } })

describe('the loop', () => {
  test('without transfers', () => {
    expect(loopSentence(small.scenario, small.facts)).toBe('Loop: 10 zones, 10.0 m; a carrier may wait in each of them. No transfers.')
    expect(zoneNamesSentence(small.notes)).toBe('The zones are called Z01 … Z10.')
  })

  test('with transfers, all or some of them entered only when the exit is clear', () => {
    const corners = SMALL_LINE.replace(
      'stations:',
      'corners: { zones: [Z03, Z04, Z09, Z10], turn: right, lift: 2 s, lower: 1 s, enterOnlyIfExitClear: true }\nstations:',
    )
    const { scenario, facts } = read(corners)
    expect(loopSentence(scenario, facts)).toBe(
      'Loop: 10 zones, 10.0 m; a carrier may wait in 6 of them. 4 transfers (Z03, Z04, Z09, Z10), entered only when the exit is clear.',
    )
    const some = { ...facts, exitClearTransfers: ['Z03'] }
    expect(loopSentence(scenario, some)).toContain('(Z03, Z04, Z09, Z10); entered only when the exit is clear: Z03.')
    expect(loopSentence(scenario, { ...facts, exitClearTransfers: [] })).toContain('(Z03, Z04, Z09, Z10).')
  })

  test('zone names that the file gives are not told again', () => {
    const names = { zoneNames: ['in', 'Z02', 'Z03'], generatedZoneNames: ['Z02', 'Z03'] }
    expect(zoneNamesSentence({ ...names, generatedZoneNames: [] })).toBeNull()
    expect(zoneNamesSentence(names)).toBe('Zones without a name in the file are called Z02, Z03.')
  })
})

test('carriers, by the rule of their start', () => {
  expect(carriersSentence(small.scenario)).toBe('Carriers: 4, 0.8 m long, 0.8 m wide, spread evenly at the start.')
  const carriers = small.scenario.line.carriers
  expect(carriersSentence(withLine(small.scenario, { carriers: { ...carriers, start: 'packed' } }))).toContain(
    'packed from the first zone on',
  )
  expect(carriersSentence(withLine(small.scenario, { carriers: { ...carriers, start: [0, 1, 2, 3], widthMetres: null } }))).toBe(
    'Carriers: 4, 0.8 m long, each at its named zone at the start.',
  )
})

describe('what is judged', () => {
  test('a shift of a calendar', () => {
    expect(windowSentence(small.scenario)).toBe('Judged: second shift, 2 h after 2 h of warm-up, 110 min of it net; plan 70 per shift.')
    expect(breaksSentence(small.scenario)).toBe('Breaks in it: 10 min after 60 min; the conveyor goes on.')
    expect(breaksSentence(withLine(small.scenario, { conveyorDuringBreaks: false }))).toContain('the conveyor stops too')
  })

  test('a given length, no plan, no breaks', () => {
    expect(windowSentence(exact.scenario)).toBe('Judged: 60 min after 10 min of warm-up; no plan given.')
    expect(windowSentence(withLine(exact.scenario, { window: { warmupSeconds: 0, endSeconds: 60 } }))).toContain('60 s from the start')
    expect(breaksSentence(exact.scenario)).toBeNull()
  })
})

describe('takt', () => {
  test('against the slowest exchange, with what is left', () => {
    // Net 110 min for 70 units: 94.3 s. Exchange at B, by mechanics: 70 + move 1/0.2 + 0.2/0.5 = 5.4 + clear 0.8/0.2 + 0.2/1 + 0.1 = 4.3: 79.7 s.
    expect(taktSentence(small.scenario, small.facts)).toBe(
      'Takt 94.3 s against the slowest exchange, 79.7 s at B Fit: 14.6 s (15\u202f%) are left for stops and for waiting.',
    )
  })

  test('that the line cannot keep', () => {
    const calendar = { ...small.scenario.calendar!, taktSeconds: 60 }
    expect(taktSentence({ ...small.scenario, calendar }, small.facts)).toBe(
      'Takt 60.0 s against the slowest exchange, 79.7 s at B Fit: 19.7 s too slow, the plan cannot be met by this line, whatever the number of carriers.',
    )
  })

  test('not without a plan', () => expect(taktSentence(exact.scenario, exact.facts)).toBeNull())
})

describe('the law', () => {
  const say = ({ scenario, facts }: typeof small) =>
    lawSentences(scenario, facts, 'the window', facts.law!.unitsPerLap * workingSeconds(scenario.line))

  test('exact where times are constant and there are no ramps', () => {
    // Move 1/0.2 = 5 s, clear 0.8/0.2 + 0.1 = 4.1 s. Lap 10·5 + 35 = 85; exchange 5 + 20 + 4.1 = 29.1; holes 10·4.1 = 41. Knees 85/29.1 and 10 − 41/29.1.
    expect(say(exact)).toEqual([
      'Law of the loop (exact): one lap of a carrier alone 85.0 s, slowest exchange 29.1 s (A), one lap of a hole 41.0 s.',
      'Below 3 carriers the loop is carrier-limited, from 3 to 8 station-limited, above 8 space-limited; first try 6.',
      'With 4 carriers it is station-limited: 123.7 units per hour at work, 123 in the window without stops.',
    ])
  })

  test('an estimate that says why', () => {
    const [terms, , now] = say(small)
    expect(terms).toContain('(an estimate: ramps, random times, breakdowns, breaks)')
    expect(now).toContain('without stops and without chance')
  })

  test('knees the wrong way round: space runs out before the station sets the pace', () => {
    const { scenario, facts } = small
    const law = { ...facts.law!, carriersLow: 7, carriersHigh: 4 }
    expect(lawSentences(scenario, { ...facts, law }, 'the window', 3600)[1]).toMatch(/^There are too few zones/)
  })
})

describe('tables', () => {
  test('stations, the slowest exchange marked', () => {
    const table = stationsTable(small.facts)
    expect(table.rows.map((row) => row.marked)).toEqual([false, true, false])
    expect(table.rows[1]!.cells).toEqual(['B Fit', 'Z05', 'work', '70.0', '0.0', '9.7', '79.7'])
    expect(table.columns.length).toBeLessThanOrEqual(8)
  })

  test('stops on either clock', () => {
    expect(stopsTable(small.facts).rows[0]!.cells).toEqual(['jam', 'station B', '60 min of operation', '2 min'])
    const [stop] = small.facts.stops
    expect(stopsTable({ ...small.facts, stops: [{ ...stop!, clock: 'calendar' }] }).rows[0]!.cells[2]).toBe('60 min by the clock')
  })

  test('variants with their shares', () => {
    expect(variantsTable({ ...small.facts, variants: [{ name: 'a', share: 0.125 }] }).rows[0]!.cells).toEqual(['a', '12.50'])
  })
})

test('variations by name', () => {
  expect(variationsSentence({ variations: ['train', 'slow'] })).toBe('Variations in the file: train, slow.')
  expect(variationsSentence({ variations: [] })).toBeNull()
})
