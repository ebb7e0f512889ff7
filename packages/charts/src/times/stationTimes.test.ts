import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { type ByStationState, STATION_STATES, type StationState } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { statesIn, stationTimes } from './stationTimes.ts'

const WINDOW = { per: 'shift', windowSeconds: 30_000 }

function station(title: string, of: Partial<Record<StationState, number>>) {
  const shares = Object.fromEntries(STATION_STATES.map((state) => [state, of[state] ?? 0])) as ByStationState
  return { name: title.toLowerCase(), title, shares, longestBlockSecondsMean: 90, stoppedBy: [] }
}

const count = {
  carriers: 6,
  stations: [
    station('Load', { working: 0.4, exchanging: 0.1, starved: 0.5 }),
    station('Test', { working: 0.57, exchanging: 0.1, starved: 0.2, blocked: 0.01, stopped: 0.02, break: 0.1 }),
  ],
}

test('where nothing works, none is the busiest', () => {
  const still = { ...count, stations: [station('Load', { blocked: 1 }), station('Test', { starved: 1 })] }
  expect(stationTimes(still, WINDOW).finding).toBe('With 6 carriers no station works in the shift.')
})

describe('rows', () => {
  const figure = stationTimes(count, WINDOW)
  const { table } = figure
  const bars = marksOf(figure, 'area').filter(({ y }) => Number(y[0]) > 1)
  const stateOf = (ink: string) => STATION_STATES[Number(ink.slice(6))]
  test('segments of a station follow each other from 0 to 100, in the order of the states', () => {
    expect(bars.map(({ ink }) => stateOf(ink))).toEqual(['working', 'blocked', 'exchanging', 'starved', 'stopped', 'break'])
    expect(bars[0]!.x[0]).toBe(0)
    bars.slice(1).forEach(({ x }, index) => {
      expect(x[0]).toBe(bars[index]!.x[1])
    })
    expect(Number(bars.at(-1)!.x[1])).toBeCloseTo(100, 9)
  })
  test('a part below 4 % carries nothing, a wider one its letter or its word', () => {
    const of = (state: string) => bars.find(({ ink }) => stateOf(ink) === state)!.words
    expect([of('stopped'), of('blocked')]).toEqual([[], []])
    expect(of('break')).toEqual(['break', 'Br'])
  })
  test('the table holds the same shares in per cent, and all states in full behind them', () => {
    expect(table.columns.map(({ head }) => head.replace('-\n', ''))).toEqual([
      'Station',
      'working',
      'blocked',
      'exchanging',
      'starved',
      'stopped',
      'break',
      'longest block,\nmean (min)',
    ])
    expect(table.rows[1]!.cells).toEqual(['test Test', '57', '1', '10', '20', '2', '10', '1.5'])
    const fields = table.columns.flatMap((column) => column.fields.map(({ name }) => name))
    expect(fields).toContain('waiting_for_receiver')
    expect(table.rows[1]!.values[fields.indexOf('starved')]).toBeCloseTo(0.2, 12)
  })
  test('a terminal gets the seven largest states, and is told which are left out', () => {
    const of: Partial<Record<StationState, number>> = {
      working: 0.5,
      handling: 0.01,
      'waiting for operator': 0.1,
      blocked: 0.1,
      exchanging: 0.1,
    }
    const all = { ...of, starved: 0.05, stopped: 0.05, 'waiting for product': 0.04, break: 0.05 }
    const many = stationTimes({ carriers: 6, stations: [station('Test', all)] }, WINDOW).table
    expect(many.columns.filter(({ pageOnly }) => !pageOnly)).toHaveLength(8)
    expect(many.note).toContain('With handling and waiting for product each row adds up to 100 but for rounding.')
  })
})

describe('finding', () => {
  const say = (of: Partial<Record<StationState, number>>) =>
    stationTimes({ carriers: 6, stations: [count.stations[0]!, station('Test', of)] }, WINDOW).finding.replaceAll('\u202f', ' ')
  test('starved at the busiest', () => {
    expect(say({ working: 0.57, exchanging: 0.1, starved: 0.2 })).toBe(
      'With 6 carriers the busiest station is Test: working 57 % of the shift, without a carrier 20 %.',
    )
  })
  test('blocked at the busiest', () => {
    expect(say({ working: 0.57, exchanging: 0.1, blocked: 0.2, starved: 0.01 })).toContain('unable to send its carrier on 20 %.')
  })
  test('an operator at the busiest', () => {
    expect(say({ working: 0.57, exchanging: 0.1, 'waiting for operator': 0.2, starved: 0.01 })).toContain('waiting for an operator 20 %.')
  })
  test('neither', () => {
    expect(say({ working: 0.7, exchanging: 0.1, blocked: 0.01, starved: 0.02 })).toContain(
      'working 70 % of the shift; it hardly ever waits.',
    )
  })
  test('no stations, no claim', () => expect(stationTimes({ carriers: 6, stations: [] }, WINDOW).finding).toBe('There are no stations.'))
})

test('states of several counts, in the order of the engine', () => {
  const other = { stations: [station('Load', { handling: 0.1, working: 0.9 })] }
  expect(statesIn([count, other])).toEqual(['working', 'handling', 'blocked', 'exchanging', 'starved', 'stopped', 'break'])
})

test('the alternative text states the finding', () => {
  const { alt, finding } = stationTimes(count, WINDOW)
  expect(alt).toContain(finding)
})
