import { describe, expect, test } from 'vitest'
import { read } from '../../../../tests/helpers/checkedLine.ts'
import { EXACT_LINE, OPEN_LINE, SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { lawSentences, taktSentence } from './lawWords.ts'

const small = read(SMALL_LINE)
const exact = read(EXACT_LINE)
const open = read(OPEN_LINE)

describe('takt', () => {
  test('against the slowest exchange, with what is left', () => {
    // Net 110 min for 70 units: 94.3 s. Exchange at B, by mechanics: 70 + move 1/0.2 + 0.2/0.5 = 5.4 + clear 0.8/0.2 + 0.2/1 + 0.1 = 4.3: 79.7 s.
    expect(taktSentence(small.scenario, small.facts, 'station')).toBe(
      'The plan leaves 94.3 s of working time for each unit (the takt). The slowest exchange, at B Fit, takes 79.7 s on average: 14.6 s (15\u202f%) are left for stops and for waiting.',
    )
  })

  test('that the line cannot keep', () => {
    const calendar = { ...small.scenario.calendar!, taktSeconds: 60 }
    expect(taktSentence({ ...small.scenario, calendar }, small.facts, null)).toMatch(
      /takes 79\.7 s on average, 19\.7 s too long: the plan is not to be expected, whatever the number of carriers\.$/,
    )
    const facts = { ...small.facts, law: { ...small.facts.law!, exact: true } }
    expect(taktSentence({ ...small.scenario, calendar }, facts, null)).toMatch(/the plan cannot be met, whatever the number of carriers\.$/)
  })

  test('not without a plan, nor where something else is slower', () => {
    expect(taktSentence(exact.scenario, exact.facts, 'station')).toBeNull()
    expect(taktSentence(small.scenario, small.facts, 'operator')).toBeNull()
    // shares of a mix sum to one but for rounding
    const nearly = { ...small.facts, law: { ...small.facts.law!, unitsPerLap: 1 - 1e-16 } }
    expect(taktSentence(small.scenario, nearly, 'station')).not.toBeNull()
    const twoALap = { ...small.facts, law: { ...small.facts.law!, unitsPerLap: 2 } }
    expect(taktSentence(small.scenario, twoALap, 'station')).toBeNull()
  })
})

describe('the law', () => {
  test('exact where times are constant and there are no ramps', () => {
    // Move 1/0.2 = 5 s, clear 0.8/0.2 + 0.1 = 4.1 s. Lap 10·5 + 35 = 85; exchange 5 + 20 + 4.1 = 29.1; holes 10·4.1 = 41. Knees 85/29.1 and 10 − 41/29.1.
    expect(lawSentences(exact.scenario, exact.facts)).toEqual([
      'The law of the loop (what mean times alone say of carriers, stations and free zones; exact): one lap of a carrier alone takes 85 s, the slowest exchange 29.1 s (A Load), one lap of a free zone against the flow 41 s.',
      'Below 3 carriers the loop is carrier-limited (too few to keep the slowest station busy), from 3 to 8 station-limited, above 8 space-limited (too few free zones to move into). A first try: 6.',
      'With 4 carriers it is station-limited: 123.7 units per working hour, 124 in the window without stops.',
    ])
  })

  test('an estimate that says why', () => {
    const [terms, , now] = lawSentences(small.scenario, small.facts)
    expect(terms).toContain('an estimate: ramps, random times, breakdowns, breaks)')
    expect(now).toContain('in the second shift without stops and without chance')
  })

  test('knees the wrong way round: space runs out before the station sets the pace', () => {
    const { scenario, facts } = small
    const law = { ...facts.law!, carriersLow: 7, carriersHigh: 4 }
    expect(lawSentences(scenario, { ...facts, law })[1]).toMatch(/^There are too few zones/)
  })

  test('knees that meet, or below the first carrier', () => {
    const { scenario, facts } = small
    const knees = (carriersLow: number, carriersHigh: number): string =>
      lawSentences(scenario, { ...facts, law: { ...facts.law!, carriersLow, carriersHigh } })[1]!
    expect(knees(2, 2)).toMatch(/^Below 2 carriers the loop is carrier-limited \(.*\), with 2 station-limited, above 2 space-limited/)
    expect(knees(1, 4)).toMatch(/^Up to 4 carriers the loop is station-limited, above 4 space-limited/)
  })

  test('of an open line it says nothing', () => {
    expect(lawSentences(open.scenario, open.facts)).toEqual([])
  })
})
