import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { TOP } from '../tidy/sources.ts'
import { EVIDENCE, namedBy, sourcesOf, sourcesOfCheck } from './evidence.ts'
import { judged, rightCells, type TestReport } from './rightPage.ts'

test('every place is there; what rests on the outside names its sources', () => {
  for (const evidence of EVIDENCE) {
    for (const place of evidence.places) {
      expect(existsSync(join(TOP, place)), place).toBe(true)
    }
    if (evidence.outside) expect(sourcesOf(evidence).length, evidence.title).toBeGreaterThan(10)
  }
})

test('every oracle belongs to a kind', () => {
  const oracles = readdirSync(join(TOP, 'tests/oracle'), { recursive: true }) as string[]
  const lost = oracles
    .filter((file) => file.endsWith('.test.ts'))
    .filter((file) => !EVIDENCE.some(({ places }) => places.some((place) => `tests/oracle/${file}`.startsWith(place))))
  expect(lost).toEqual([])
})

const report = (...failed: readonly string[]): TestReport => ({
  testResults: [
    {
      name: '/elsewhere/tests/oracle/coverage.test.ts',
      status: 'passed',
      assertionResults: ['covers', 'does not'].map((fullName) => ({ fullName, status: failed.includes(fullName) ? 'failed' : 'passed' })),
    },
    { name: '/elsewhere/tests/soak/canaries.test.ts', status: failed.includes('soak') ? 'failed' : 'passed', assertionResults: [] },
  ],
})

test('what passed, failed, could not be loaded and was not run is told as that', () => {
  const kind = (told: ReturnType<typeof judged>, id: string) => told.find(({ evidence }) => evidence.id === id)!
  const results = (told: ReturnType<typeof judged>, id: string) => kind(told, id).checks.map(({ name, result }) => `${name}: ${result}`)
  expect(results(judged(report()), 'coverage')).toEqual(['covers: passed', 'does not: passed'])
  expect(results(judged(report('covers')), 'coverage')).toEqual(['covers: failed', 'does not: passed'])
  expect(kind(judged(report('soak')), 'canaries').checks).toMatchObject([{ file: 'tests/soak/canaries.test.ts', result: 'failed' }])
  const said = JSON.stringify(rightCells(judged(report())))
  expect(said).toContain('2 checks pass, none fails; they are of 1 of ')
  expect(said).toContain('Not run this time: Exactly known values')
  expect(JSON.stringify(rightCells(judged(report('covers'))))).toContain('1 of 2 checks fails')
})

test('each check has the sources that it rests on', () => {
  const of = (id: string, file: string, check: string) => {
    const evidence = EVIDENCE.find((each) => each.id === id)!
    return sourcesOfCheck(namedBy(evidence), `/elsewhere/${file}`, check)
  }
  const special = of('statistics', 'tests/oracle/statistics/special.test.ts', "'special-04' 'lnGamma' { x: 10.3 }")
  const balance = of('statistics', 'tests/oracle/statistics/balance.test.ts', "'balance-01' 'Jackson', cycle 7")
  expect(balance.join()).toContain('Jackson')
  expect(special).not.toEqual(balance)
  expect(
    of('exact', 'tests/oracle/exactValues.test.ts', 'output of random loops breakdown-ring three-stations.N4.operating').length,
  ).toBeGreaterThan(0)
  expect(of('coverage', 'tests/oracle/coverage.test.ts', 'covers')).toEqual(sourcesOf(EVIDENCE.find(({ id }) => id === 'coverage')!))
})
