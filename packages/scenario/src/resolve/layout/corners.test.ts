import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

function read(corners: string, ...changes: [string, string][]) {
  const { scenario, problems } = readScenario(scenarioText(...changes, ['', corners]))
  return { line: scenario?.line, turns: scenario?.layout.turns, codes: problems.map((problem) => problem.code) }
}

test('way in low, way out high; sideways between two corners', () => {
  const { line, turns } = read('corners: { zones: [Z03, Z06], turn: right, lift: 1 s, lower: 1 s }')
  expect(line?.paths.map((path) => [path.fromPosition, path.toPosition, path.across])).toEqual([
    ['low', 'low', false],
    ['low', 'low', false], // Z02 → Z03: the corner is entered lengthwise
    ['high', 'low', true],
    ['low', 'low', true],
    ['low', 'low', true], // Z05 → Z06: entered sideways
    ['high', 'low', false],
    ['low', 'low', false],
    ['low', 'low', false],
    ['low', 'low', false],
    ['low', 'low', false],
  ])
  expect(turns?.map((turn) => turn ?? '-').join(' ')).toBe('- - right - - right - - - -')
})

test('a corner at zone 0 turns its own way out; the carrier comes back lengthwise', () => {
  const { line } = read('corners: { zones: [Z02, Z05], turn: right, lift: 1 s, lower: 1 s }')
  expect(line?.paths.map((path) => path.across)).toEqual([false, true, true, true, false, false, false, false, false, false])
  const atZero = read('corners: { zones: [Z01, Z05], turn: left, lift: 1 s, lower: 1 s }')
  expect(atZero.line?.paths.map((path) => path.across)).toEqual([true, true, true, true, false, false, false, false, false, false])
})

test('several kinds of corners, each with its own times', () => {
  const { line, turns } = read(
    'corners: [{ zones: [Z03], turn: right, lift: 1 s, lower: 1 s }, { zones: [Z06], turn: left, lift: 3 s, lower: 2 s }]',
  )
  expect(line?.zones[5]?.transfer).toEqual({ liftSeconds: 3, lowerSeconds: 2, enterOnlyIfExitClear: false })
  expect(turns?.[5]).toBe('left')
})

test('a carrier that would come round sideways is a warning, unless it is square', () => {
  const corner = 'corners: { zones: [Z03], turn: right, lift: 1 s, lower: 1 s }'
  expect(read(corner).codes).toEqual(['W_CORNERS_OPEN'])
  expect(read(corner, ['width: 0.8 m', 'width: 0.7 m']).codes).toEqual(['W_CORNERS_ODD'])
})
