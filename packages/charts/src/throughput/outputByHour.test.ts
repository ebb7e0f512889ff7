import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { describe, expect, test } from 'vitest'
import { breaksWithin, outputByHour } from './outputByHour.ts'

const breaks = [{ startSeconds: 3_000, lengthSeconds: 1_200 }]

const paces = (figure: ReturnType<typeof outputByHour>) =>
  marksOf(figure, 'rule')
    .filter(({ ink }) => ink === 'plan')
    .map(({ y }) => y[0])

describe('a window of two hours and a half', () => {
  const figure = outputByHour(
    { carriers: 5, outputByHour: [30, 40, 20] },
    { per: 'shift', windowSeconds: 9_000, breaks, plan: 104, startClock: '22:30' },
  )
  test('the last bar is as wide as its part of an hour', () => {
    const bars = marksOf(figure, 'area').filter(({ ink }) => ink === 'barPale')
    expect(bars.map(({ x }) => Math.round((Number(x[1]) - Number(x[0])) * 100) / 100)).toEqual([0.88, 0.88, 0.38])
  })
  test('breaks are shaded where they fall', () => {
    expect(marksOf(figure, 'area').filter(({ ink }) => ink === 'pause')).toMatchObject([{ x: [3_000 / 3_600, 4_200 / 3_600] }])
  })
  test('the plan is spread over the time worked', () => {
    // 50, 50 and 30 minutes worked of 130
    expect(paces(figure)).toEqual([40, 40, 24])
  })
  test('hours are named by the clock, past midnight too', () => {
    expect(figure.table.rows.map(({ cells }) => cells)).toEqual([
      ['22:30', '50', '30.0', '40.0', '36.0'],
      ['23:30', '50', '40.0', '40.0', '48.0'],
      ['00:30', '30', '20.0', '24.0', '40.0'],
    ])
  })
  test('the finding compares hours once breaks are taken out', () => {
    expect(figure.finding).toBe('With 5 carriers 42 units are made in an hour worked; slowest is 22:30, at 36.')
  })
})

test('even hours are said to be even', () => {
  const { finding } = outputByHour({ carriers: 1, outputByHour: [40, 20] }, { windowSeconds: 5_400 })
  expect(finding).toBe(
    'With 1 carrier 40 units are made in an hour worked, and no hour differs by more than 5 % once breaks are taken out.',
  )
})

test('without a plan there is no pace, and without work no rate', () => {
  const figure = outputByHour(
    { carriers: 1, outputByHour: [0] },
    { windowSeconds: 3_600, breaks: [{ startSeconds: 0, lengthSeconds: 3_600 }] },
  )
  expect(paces(figure)).toEqual([])
  expect(figure.table.rows[0]!.cells).toEqual(['hour 1', '0.0', '0.0', '–'])
})

test('breaks that are there but not known leave the pace out, and are said to be included', () => {
  const figure = outputByHour({ carriers: 5, outputByHour: [44, 22] }, { per: 'shift', windowSeconds: 7_200, netSeconds: 5_400, plan: 60 })
  const { finding, table } = figure
  expect(paces(figure)).toEqual([])
  expect(finding).toBe('With 5 carriers 33 units are made in an hour of the shift, breaks included; slowest is hour 2, at 22.')
  expect(table.columns.map(({ head }) => head)).toEqual(['Hour', 'Length (min)', 'Mean output (units)', 'Rate (units/h)'])
})

test('a number never stands on the line of the pace', () => {
  const figure = outputByHour({ carriers: 5, outputByHour: [10, 50] }, { windowSeconds: 7_200, plan: 60 })
  expect(
    marksOf(figure, 'words')
      .slice(0, 2)
      .map(({ y }) => y),
  ).toEqual([30, 50])
})

test('breaks of a line, as far as they fall into its window', () => {
  const at = (startSeconds: number, lengthSeconds: number) => ({ startSeconds, lengthSeconds })
  expect(breaksWithin([at(0, 50), at(90, 20), at(150, 10), at(190, 20), at(200, 5)], { warmupSeconds: 100, endSeconds: 200 })).toEqual([
    at(0, 10),
    at(50, 10),
    at(90, 10),
  ])
})
