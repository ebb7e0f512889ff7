import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { TOP } from '../tidy/sources.ts'
import { EVIDENCE, sourcesOf } from './evidence.ts'
import { judged, rightCells, type TestReport } from './rightPage.ts'

test('every place is there and holds tests; what rests on the outside names its sources', () => {
  for (const evidence of EVIDENCE) {
    for (const place of evidence.places) {
      expect(existsSync(join(TOP, place)), place).toBe(true)
      const files = place.endsWith('.ts') ? [place] : (readdirSync(join(TOP, place), { recursive: true }) as string[])
      expect(
        files.some((file) => file.endsWith('.test.ts')),
        place,
      ).toBe(true)
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
  expect(kind(judged(report()), 'coverage')).toMatchObject({ passed: 2, failed: [] })
  expect(kind(judged(report('covers')), 'coverage')).toMatchObject({ passed: 1, failed: ['covers'] })
  expect(kind(judged(report('soak')), 'canaries').failed).toEqual(['/elsewhere/tests/soak/canaries.test.ts'])
  const said = JSON.stringify(rightCells(judged(report())))
  expect(said).toContain('2 checks pass, none fails; they are of 1 of ')
  expect(said).toContain('Not run this time: Exactly known values')
  expect(JSON.stringify(rightCells(judged(report('covers'))))).toContain('1 of 2 checks fail')
})
