import { SCREENING_CAUTION } from '@loopwright/decide/screening'
import { beforeAll, expect, test } from 'vitest'
import { decisionRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { TOLD_TWICE, terminalOf, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { type DecisionRuns, screeningsOf } from './decisionRuns.ts'
import { screeningStory } from './screeningStory.ts'

let runs: DecisionRuns
beforeAll(async () => {
  runs = await decisionRuns(2)
})
const flat = (text: string): string => text.replace(/\s+/g, ' ')

test('the caution stands before every figure, word by word, in the terminal too', () => {
  const { cells } = screeningStory(runs)
  expect(cells[1]).toMatchObject({ kind: 'caution', markdown: SCREENING_CAUTION })
  expect(flat(terminalOf(cells))).toContain(SCREENING_CAUTION)
})

test('each alternative is told by counts that add up, and never by a verdict', () => {
  const { answer, cells } = screeningStory(runs)
  screeningsOf(runs).forEach(({ name, result: { counts, findings } }, index) => {
    expect(answer.sentences[index]).toContain(`“${name}”: ${counts['above guidance value']} figure`)
    expect(answer.sentences[index]).toContain(`${counts['not checked']} not checked.`)
    expect(Object.values(counts).reduce((sum, one) => sum + one, 0)).toBe(new Set(findings.map(({ what }) => what)).size)
  })
  expect(JSON.stringify(cells)).not.toMatch(/\b(safe|unsafe|compliant|approved|meets the standard)\b/i)
})

test('what is within a guidance value is never told without its assumptions', () => {
  const { measure } = screeningStory(runs)
  const told = measure.flatMap(({ views }) => views.of[0]!.content.rows.map(({ cells }) => cells[2]!))
  expect(told.filter((word) => word.startsWith('within'))).not.toEqual([])
  for (const word of told) expect(word).toMatch(/^(above guidance value|within guidance value, assumptions: .+|not checked)$/)
})

test('the order of risk reduction and the standards to open stand there; terminal and page tell the same', () => {
  const { cells, reduction } = screeningStory(runs)
  expect(reduction.markdown).toMatch(/1\. Design[\s\S]*2\. Guards[\s\S]*3\. Information/)
  expect(reduction.markdown).toContain('ISO 13855')
  expect(toldTwice(cells)).toEqual(TOLD_TWICE)
})

test('what people walk is told by person and task, where ways were measured; nowhere else', () => {
  const { walking, notChecked } = screeningStory(runs)
  expect(walking).toHaveLength(4)
  const rows = walking[0]!.views.of[0]!.content.rows.map(({ cells }) => cells)
  expect(rows.slice(0, 3).map(([person, of]) => [person, of])).toEqual([
    ['Refrigerant parts', 'fitPipes'],
    ['Refrigerant parts', 'pushes and pulls'],
    ['Refrigerant parts', 'all together'],
  ])
  expect(rows[0]!.at(-1)).toBe('tape on the floor, 20 units')
  const longest = notChecked[0]!.views.of[0]!.content.rows.map(({ cells }) => cells).find(([what]) => what!.startsWith('longest way'))!
  expect(longest.slice(0, 2)).toEqual(['longest way walked in a shift: Refrigerant parts', `${rows[2]![4]} m`])
  const { decision } = runs
  const without = screeningStory({ ...runs, decision: { ...decision, screening: { ...decision.screening!, walks: [] } } })
  expect(without.walking).toEqual([])
})
