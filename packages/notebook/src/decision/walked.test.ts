import { metresOf } from '@loopwright/decide/screening'
import { beforeAll, expect, test } from 'vitest'
import { decisionExample, decisionRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { type DecisionRuns, effortOf, screeningsOf } from './decisionRuns.ts'
import { mostWalked, needsWalks, walkedBy } from './walked.ts'

let runs: DecisionRuns
beforeAll(async () => {
  runs = await decisionRuns(2)
})

test('each unit is walked for once at its task, in every alternative', () => {
  for (const [index, { result }] of screeningsOf(runs).entries()) {
    const { units } = runs.result.comparison.lines[index]!
    const made = units.reduce((sum, one) => sum + one, 0) / units.length
    const parts = result.walked.flatMap(({ person, parts: its }) => its.map((part) => ({ person, ...part })))
    const wired = parts.find(({ of }) => of === 'wire')!
    expect(wired).toMatchObject({ person: 'Wiring', metresEach: 2.5 })
    // a carrier more or less on the way between wiring and the end, in each window
    expect(Math.abs(wired.times - made)).toBeLessThan(10)
  }
})

test('pushes and tasks of one person add up, and the table of alternatives tells the one who walks most', () => {
  const [{ result }] = screeningsOf(runs) as [ReturnType<typeof screeningsOf>[number]]
  const pipes = result.walked.find(({ person }) => person === 'Refrigerant parts')!
  expect(pipes.parts.map(({ of }) => of)).toEqual(['fitPipes', 'pushes and pulls'])
  expect(effortOf(runs, 0)!.walkMetres).toBe(Math.max(...result.walked.map(metresOf)))
  expect(result.findings.filter(({ topic }) => topic === 'Walking').map(({ value }) => value)).toEqual([effortOf(runs, 0)!.walkMetres])
})

test('a shared operator walks from one station to another at 1.1 m/s', () => {
  const people = { name: 'a', watched: 2, handlings: [], cycles: [], walks: [{ operator: 'Ann', count: 100, seconds: 500 }] }
  const walked = walkedBy(runs.scenarios[0]!.line, people, { metresPerHandling: null }, [])
  expect(walked.map(({ person }) => person)).toEqual(['Ann'])
  expect(metresOf(walked[0]!)).toBeCloseTo(550, 9)
  expect(
    mostWalked([], { ...people, walks: [], handlings: [{ operator: 'Ann', count: 5, seconds: 9 }] }, { metresPerHandling: null }),
  ).toBeNull()
})

test('a way for a task that no alternative has is refused, with the nearest name', () => {
  const decision = decisionExample((text) => text.replace('    wire: {', '    wirre: {'))
  expect(() => needsWalks({ ...runs, decision })).toThrow(
    '"screening.walks.wirre" in base-line.decision.yaml: no alternative has a task or station of that name; did you mean "wire"?',
  )
})
