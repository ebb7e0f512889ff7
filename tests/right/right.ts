/**
 * How do I know it is right? `npm run right` runs the tests that speak for the numbers and writes their result as `out/right.html`; `-- --report FILE` takes the
 * report that a whole run wrote (`npm test -- --reporter=json --outputFile=FILE`).
 */
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { writePage } from '@loopwright/notebook'
import { typedOption } from '../helpers/typedOption.ts'
import { EVIDENCE } from './evidence.ts'
import { judged, rightCells, type TestReport } from './rightPage.ts'

const OUT = 'out/right.html'
const given = typedOption('report') ?? null
const folder = mkdtempSync(join(tmpdir(), 'loopwright-right-'))
try {
  const file = given ?? join(folder, 'report.json')
  if (given === null)
    spawnSync(
      'npx',
      ['vitest', 'run', ...EVIDENCE.flatMap(({ places }) => places), '--reporter=default', '--reporter=json', `--outputFile.json=${file}`],
      {
        stdio: ['ignore', 2, 2],
      },
    )
  const all = judged(JSON.parse(readFileSync(file, 'utf8')) as TestReport)
  mkdirSync('out', { recursive: true })
  const cells = rightCells(all)
  writeFileSync(
    OUT,
    await writePage(
      { question: 'How do I know it is right?', scenarioName: 'loopwright', date: new Date(), command: 'npm run right' },
      cells,
    ),
  )
  const checks = all.flatMap((each) => each.checks)
  const [passed, failed] = (['passed', 'failed'] as const).map((result) => checks.filter((check) => check.result === result).length)
  process.stdout.write(`${passed} passed, ${failed} failed\nPage: ${OUT}\n`)
  if (failed! > 0) process.exitCode = 1
} finally {
  rmSync(folder, { recursive: true, force: true })
}
