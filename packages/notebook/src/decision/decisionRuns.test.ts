import { beforeAll, describe, expect, test } from 'vitest'
import { decisionExample, decisionRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { type DecisionRuns, effortOf, overtimeOf, paybackOf, screeningsOf } from './decisionRuns.ts'

let runs: DecisionRuns
beforeAll(async () => {
  runs = await decisionRuns(4)
})

test('money comes of the very shifts that were simulated', () => {
  const result = paybackOf(runs)
  expect(result.today).toBe('push line')
  expect(result.alternatives.map(({ name }) => name)).toEqual(['powered rollers', 'zoned loop', 'guided vehicles'])
  const { units } = runs.result.comparison.lines[0]!
  const rate = units.reduce((sum, one) => sum + one, 0) / units.length / 450
  expect(result.overtimeToday).toBeCloseTo(
    units.map((made) => Math.max(0, 320 - made) / rate).reduce((sum, one) => sum + one, 0) / units.length,
    9,
  )
  expect(overtimeOf(units, 320, runs.scenarios[0]!)).toBeCloseTo(result.overtimeToday, 9)
  // 84.4 s at the push line’s tester, 75.375 s on the loop: both by hand
  expect(result.alternatives[1]!.naive!.saving.secondsPerUnit).toBeCloseTo(84.4 - 75.375, 5)
  expect(result.money.paidHours).toBe(7.5)
})

test('a person of the push line pushes once and pulls once for each unit', () => {
  const made = runs.result.comparison.lines[0]!.units.reduce((sum, one) => sum + one, 0) / 4
  const unmeasured = { ...runs, decision: { ...runs.decision, screening: null } }
  const effort = effortOf(unmeasured, 0)!
  expect(Math.abs(effort.handlings - 2 * made)).toBeLessThan(12)
  // 10.6 and 10 s, and what breaks hold up of them
  expect(effort.handlingSeconds / effort.handlings).toBeGreaterThan(10.3)
  expect(effort.handlingSeconds / effort.handlings).toBeLessThan(10.8)
  expect(effort.walkMetres).toBeCloseTo(3 * effort.handlings, 9)
  expect(effortOf(unmeasured, 2)).toEqual({ handlings: 0, handlingSeconds: 0, walkMetres: 0 })
})

test('pushing is screened where somebody pushes, drives where there are some', () => {
  const topics = (name: string) =>
    new Set(
      screeningsOf(runs)
        .find((one) => one.name === name)!
        .result.findings.map(({ topic }) => topic),
    )
  expect(topics('push line').has('Push force')).toBe(true)
  expect(topics('push line').has('Drive')).toBe(false)
  expect(topics('zoned loop').has('Push force')).toBe(false)
  expect(topics('zoned loop').has('Drive')).toBe(true)
})

describe('what is missing is named', () => {
  test('money, screening, a plan, one shift', () => {
    const without = (part: object): DecisionRuns => ({ ...runs, decision: { ...decisionExample(), ...part } })
    expect(() => paybackOf(without({ money: null }))).toThrow('there is no money in base-line.decision.yaml')
    expect(() => screeningsOf(without({ screening: null }))).toThrow('there is no screening in base-line.decision.yaml')
    const planless = { ...runs, scenarios: runs.scenarios.map((scenario) => ({ ...scenario, plan: null })) }
    expect(() => paybackOf(planless)).toThrow('needs a plan')
    const shiftless = { ...runs, scenarios: runs.scenarios.map((scenario) => ({ ...scenario, calendar: null })) }
    expect(() => paybackOf(shiftless)).toThrow('needs a calendar that judges one shift')
  })
})
