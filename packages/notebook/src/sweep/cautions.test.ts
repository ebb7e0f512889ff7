import { readScenario } from '@loopwright/scenario'
import type { SweepAnswer, SweepCount } from '@loopwright/study'
import { expect, test } from 'vitest'
import { standingCautions, warnings } from './cautions.ts'

const SHIFT = { one: 'shift', each: 'a shift', many: 'shifts', plan: null, line: 'loop', named: null } as const
const count = (carriers: number, replications: number, gridlocks = 0, outOfProducts = 0): SweepCount =>
  ({ carriers, replications, gridlocks, outOfProducts }) as Partial<SweepCount> as SweepCount
const NO_HOLDER = { stations: [] }
const answer = { best: 12, bestAtUpperEnd: false } as Partial<SweepAnswer> as SweepAnswer
const whole = { partial: false, replications: 30, answer, counts: [count(11, 30), count(12, 30)] }

test('a result without doubt carries no warning', () => {
  expect(warnings(whole, SHIFT, NO_HOLDER)).toEqual([])
})

test('gridlock is shouted, with its counts', () => {
  const [cell] = warnings({ ...whole, counts: [count(17, 30), count(18, 30, 30)] }, SHIFT, NO_HOLDER)
  expect(cell).toMatchObject({ id: 'warning-gridlock', tone: 'warning', title: 'Gridlock: the loop stands still' })
  expect(cell!.markdown).toContain('- 18 carriers: in 30 of 30 runs')
  expect(cell!.markdown).not.toContain('17 carriers')
})

test('a stopped sweep says how far it came', () => {
  const [cell] = warnings({ ...whole, partial: true, counts: [count(11, 7), count(12, 9)] }, SHIFT, NO_HOLDER)
  expect(cell!.markdown).toContain('7 to 9 of 30 shifts of each count')
})

test('the best count at the upper end, and a list of products that ran out', () => {
  const cells = warnings(
    { ...whole, answer: { ...answer, bestAtUpperEnd: true }, counts: [count(11, 30, 0, 2), count(12, 30)] },
    SHIFT,
    NO_HOLDER,
  )
  expect(cells.map(({ id }) => id)).toEqual(['warning-products', 'warning-upper-end'])
  expect(cells[1]!.markdown).toBe('More than 12 carriers may make more: add larger counts.')
  // thirteen would fill the line, so that nothing can move
  expect(warnings({ ...whole, answer: { ...answer, bestAtUpperEnd: true } }, SHIFT, NO_HOLDER, 12)).toEqual([])
})

test('every page defers to local codes and to licensed practice, and gives no verdict', () => {
  const { scenario } = readScenario(
    'format: 1\nname: a\nquestion: b?\nwarmup: 0 s\nlength: 1 h\ndrive: { speed: 15 m/min }\ncarriers: { count: 2, length: 0.8 m }\nloop: 6 zones of 1 m\nstations:\n  S1: { zone: Z01, unload: { off: 12 s }, load: { on: 20 s } }\n',
  )
  const text = standingCautions(scenario!.line)
    .map(({ title, markdown }) => `${title} ${markdown}`)
    .join(' ')
    .replace(/\s+/g, ' ')
  expect(text).toContain('Local codes')
  expect(text).toContain('a qualified (where required, licensed) professional')
  expect(text).toContain('not a risk assessment')
  expect(text).toContain('Nothing breaks down')
  expect(text).not.toMatch(/\b(safe|unsafe|compliant|approved|certified)\b/i)
})
