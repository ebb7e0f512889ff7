import { expect, test } from 'vitest'
import { readFileSync } from 'node:fs'
import { decisionOf } from '../../../../tests/helpers/decisionText.ts'
import { keptRuns } from '../../../../tests/helpers/keptRuns.ts'
import type { Effects } from '../runner/effects.ts'
import { type NotebookContext, notebook } from '../runner/notebook.ts'
import { runNotebook } from '../runner/run.ts'
import type { NotebookDecision } from './notebookDecision.ts'

const LINE = readFileSync(new URL('../../../../tests/told/lines/pump-line.yaml', import.meta.url), 'utf8')

/** Runs a body beside a line and its decision, a few windows of each. */
async function ran(body: (context: NotebookContext) => Promise<void>, text = decisionOf('pump.yaml'), replications = 10) {
  const files: Readonly<Record<string, string>> = { 'books/pump.yaml': LINE, 'books/pump.decision.yaml': text }
  const effects: Effects = {
    readFile: async (path) => files[path] ?? Promise.reject(new Error(`there is no file "${path}"`)),
    writeFile: async () => {},
    importModule: async () => ({ default: notebook({ title: 'Pump', scenario: 'pump.yaml' }, body) }),
    log: () => {},
    progress: () => {},
    now: () => new Date('2030-02-03T10:00:00Z'),
    signal: new AbortController().signal,
    store: keptRuns(),
  }
  return await runNotebook('books/pump.ts', effects, { workers: 0, replications })
}

test('each story of a decision is at hand, and each study leaves a cell that says what was simulated', { tags: 'long' }, async () => {
  let told: NotebookDecision | null = null
  const run = await ran(async ({ decision, show }) => {
    told = await decision('pump.decision.yaml')
    show(told.payback().answer, told.criteria().answer, told.screen().caution)
    show((await told.promise()).answer, (await told.acceptance()).looks, (await told.trial([20])).answer)
    const weeks = [1, 2].map((week) => ({ name: `W${week}`, units: 1500, shifts: 10 }))
    show((await told.followUp({ weeks })).answer)
  })
  expect(run.status).toBe('done')
  expect('faults' in run ? run.faults : []).toEqual([])
  const cells = run.status === 'done' ? run.cells : []
  expect(cells.map(({ id }) => id)).toEqual([
    'decision-simulated',
    'payback-answer',
    'criteria-answer',
    'caution-screening',
    'promise-simulated',
    'acceptance-simulated',
    'promise-answer',
    'acceptance-looks',
    'trial-answer',
    'followup-simulated',
    'followup-answer',
  ])
  expect(told!.scenarios.map(({ line }) => line.zones.length)).toEqual([16, 16])
})

test('shifts that differ are promised by a story of their own, and each says what was simulated', async () => {
  const shifts = decisionOf('pump.yaml').replace(
    /^promise:.*$/m,
    "promise: { until: x, shifts: { early: , late: { set: { 'carriers.count': '2' }, crew: 1 } } }",
  )
  const run = await ran(async ({ decision, show }) => {
    const told = await decision('pump.decision.yaml')
    show((await told.promiseOfShifts()).answer)
    await told.promise()
  }, shifts)
  const cells = 'cells' in run ? run.cells : []
  expect(cells.map(({ id }) => id)).toEqual(expect.arrayContaining(['promise-simulated', 'promise-2-simulated', 'promise-answer']))
  expect('faults' in run ? run.faults.map(({ message }) => message).join() : '').toContain('ask "promiseOfShifts()"')
})

test('what is wrong is told with its place, before anything is simulated', async () => {
  const fault = async (body: (context: NotebookContext) => Promise<void>, text?: string): Promise<string> => {
    const run = await ran(body, text, 2)
    return 'faults' in run ? run.faults.map(({ message, fix }) => `${message} ${fix}`).join('\n') : run.status
  }
  expect(await fault(async ({ decision }) => void (await decision('other.yaml')))).toContain('there is no file "books/other.yaml"')
  expect(
    await fault(async ({ decision }) => void (await decision('pump.decision.yaml')), decisionOf('pump.yaml').replace('38 €/h', '38,5 €/h')),
  ).toContain('books/pump.decision.yaml:5:')
  expect(
    await fault(async ({ decision }) => void (await decision('pump.decision.yaml')), decisionOf('pump.yaml').replace('9 m/min', '9 m')),
  ).toContain('drive.speed')
  expect(await fault(async ({ decision }) => void (await decision('pump.decision.yaml', { runs: 3 } as never)))).toContain('"runs"')
  expect(
    await fault(
      async ({ decision }) => {
        const told = await decision('pump.decision.yaml')
        await told.promise()
      },
      decisionOf('pump.yaml').replace(/^promise:.*$/m, ''),
    ),
  ).toContain('there is no promise in books/pump.decision.yaml')
})
