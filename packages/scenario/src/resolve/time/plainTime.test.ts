import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

function read(time: string) {
  const { scenario, problems, notes } = readScenario(scenarioText(['warmup: 1 h\nlength: 8 h\n', time]))
  return {
    window: scenario?.line.window,
    breaks: scenario?.line.breaks,
    codes: problems.map((problem) => problem.code),
    net: notes?.netSeconds,
    scenario,
  }
}

test('warm-up and length, or warm-up and end', () => {
  expect(read('warmup: 1 h\nlength: 8 h\n').window).toEqual({ warmupSeconds: 3600, endSeconds: 32_400 })
  expect(read('warmup: 1 h\nend: 8 h\n').window).toEqual({ warmupSeconds: 3600, endSeconds: 28_800 })
  expect(read('warmup: 0 s\nlength: 8 h\n').window).toEqual({ warmupSeconds: 0, endSeconds: 28_800 })
})

test('breaks are sorted by their start; net time counts an overlap once and the window only', () => {
  const { breaks, net } = read(
    'warmup: 1 h\nlength: 8 h\nbreaks: [{ after: 3 h, lasts: 30 min }, { after: 50 min, lasts: 20 min }, { after: 3.25 h, lasts: 30 min }]\n',
  )
  expect(breaks?.map((one) => one.startSeconds)).toEqual([3000, 10_800, 11_700])
  expect(net).toBe(28_800 - 600 - 2700)
})

test('a judged stretch is kept for reports', () => {
  const { scenario } = read('plan: 100 per shift\nwarmup: 8 h\nend: 24 h\njudged: { name: day 2, shifts: 2, gross: 8 h, net: 450 min }\n')
  expect(scenario?.calendar).toEqual({ judged: 'day 2', shifts: 2, grossSeconds: 28_800, netSeconds: 27_000, taktSeconds: 270 })
  expect(scenario?.plan?.unitsPerWindow).toBe(200)
})

test.each([
  ['', ['E_NEITHER']],
  ['warmup: 1 h\n', ['E_NEITHER']],
  ['warmup: 1 h\nlength: 8 h\nend: 9 h\n', ['E_ONLY_ONE_OF']],
  ['warmup: 9 h\nend: 8 h\n', ['E_WINDOW']],
  ['warmup: 1 h\nlength: 0 h\n', ['E_ZERO']],
  ['warmup: 1 h\nlength: 8 h\nbreaks: [{ after: 10 h, lasts: 1 min }]\n', ['W_BREAK_LATE']],
  ['warmup: 1 h\nlength: 8 h\nbreaks: [{ at: "08:00", lasts: 1 min }]\n', ['E_MISSING', 'E_UNKNOWN_KEY']],
])('%j', (time, expected) => {
  expect(read(time).codes).toEqual(expected)
})
