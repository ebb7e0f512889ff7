import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

function read(calendar: string) {
  const { scenario, problems } = readScenario(scenarioText(['warmup: 1 h\nlength: 8 h\n', `calendar: ${calendar}\n`]))
  return { calendar: scenario?.calendar, line: scenario?.line, codes: problems.map((problem) => problem.code) }
}

const SHIFT =
  'shift: { from: "06:00", to: "14:20", perDay: 2 }, breaks: [{ after: 120 min, lasts: 10 min }, { at: "10:10", lasts: 30 min }]'

describe('which shifts count', () => {
  test.each([
    ['second shift', 1, 500 * 60, 1000 * 60],
    ['shift 3', 1, 1000 * 60, 1500 * 60],
    ['shifts 3 to 5', 3, 1000 * 60, 2500 * 60],
    ['shifts 3..5', 3, 1000 * 60, 2500 * 60],
    ['day 2', 2, 1000 * 60, 2000 * 60],
  ])('%s', (judge, shifts, warmupSeconds, endSeconds) => {
    const { line, calendar } = read(`{ ${SHIFT}, judge: ${judge} }`)
    expect(line?.window).toEqual({ warmupSeconds, endSeconds })
    expect(calendar).toEqual({ judged: judge, shifts, grossSeconds: 30_000, netSeconds: 27_600, taktSeconds: null })
  })
  test('the first one is counted with a warning', () => {
    expect(read(`{ ${SHIFT}, judge: first shift }`).codes).toEqual(['W_NO_WARMUP'])
  })
  test.each(['third', 'shift 0', 'shifts 5 to 3', 'day 0', 'late', 'shift two'])('%s is refused', (judge) => {
    expect(read(`{ ${SHIFT}, judge: ${judge} }`).codes).toEqual(['E_UNKNOWN_SHIFT'])
  })
})

test('breaks are repeated in every shift up to the end', () => {
  const { line } = read(`{ ${SHIFT}, conveyorDuringBreaks: false, judge: second shift }`)
  expect(line?.breaks).toEqual([
    { startSeconds: 7200, lengthSeconds: 600 },
    { startSeconds: 15_000, lengthSeconds: 1800 },
    { startSeconds: 37_200, lengthSeconds: 600 },
    { startSeconds: 45_000, lengthSeconds: 1800 },
  ])
  expect(line?.conveyorDuringBreaks).toBe(false)
})

test('different shifts by name, each with its own breaks; the night shift crosses midnight', () => {
  const day =
    'shifts: { early: { from: "06:00", to: "14:00" }, late: { from: "14:00", to: "22:00", breaks: [] }, night: { from: "22:00", to: "06:00" } }'
  const { line, calendar } = read(`{ ${day}, breaks: [{ after: 4 h, lasts: 30 min }], judge: night }`)
  expect(line?.window).toEqual({ warmupSeconds: 57_600, endSeconds: 86_400 })
  expect(line?.breaks.map((one) => one.startSeconds)).toEqual([14_400, 72_000])
  expect(calendar).toMatchObject({ judged: 'night', shifts: 1, netSeconds: 27_000 })
})

test('each shift starts at its hour of the day', () => {
  const day = 'shifts: { early: { from: "06:00", to: "14:00" }, night: { from: "22:00", to: "06:00" } }'
  const { notes } = readScenario(scenarioText(['warmup: 1 h\nlength: 8 h\n', `calendar: { ${day}, judge: shift 3 }\n`]))
  expect(notes?.shiftStarts).toEqual([
    { seconds: 0, clockSeconds: 6 * 3600 },
    { seconds: 28_800, clockSeconds: 22 * 3600 },
    { seconds: 57_600, clockSeconds: 6 * 3600 },
  ])
  expect(readScenario(scenarioText()).notes?.shiftStarts).toEqual([])
})

test('takt is net time over plan', () => {
  // 27 000 s / 320 = 84.375 s
  const { scenario } = readScenario(
    scenarioText([
      'warmup: 1 h\nlength: 8 h\n',
      `plan: 320 per shift\ncalendar: { ${SHIFT.replace('30 min', '40 min')}, judge: second shift }\n`,
    ]),
  )
  expect(scenario?.calendar?.taktSeconds).toBe(84.375)
})

test('what a calendar says is not said again', () => {
  const { problems } = readScenario(
    scenarioText(['length: 8 h\n', `conveyorDuringBreaks: true\ncalendar: { ${SHIFT}, judge: second shift }\n`]),
  )
  expect(problems.map((problem) => [problem.code, problem.path])).toEqual([
    ['E_ONLY_ONE_OF', 'warmup'],
    ['E_ONLY_ONE_OF', 'conveyorDuringBreaks'],
  ])
})
