import { warningCell } from '../cells/cell.ts'
import { expect, test } from 'vitest'
import { TEN_ZONES } from '../../../../tests/helpers/scenarioTexts.ts'
import type { Effects } from './effects.ts'
import { notebook } from './notebook.ts'
import { runNotebook } from './run.ts'

const MODULE = notebook({ title: 'Ten zones', scenario: 'ten.yaml' }, async ({ sweep, story, show, prose, scenario }) => {
  const tale = story(await sweep({ carriers: { from: 2, to: 4 }, replications: 3 }))
  show(tale.answer)
  prose(`
    ## ${scenario.name}
    In **Markdown**.
  `)
  show(tale.throughput, tale.choice, tale.stations)
})

interface World {
  readonly effects: Effects
  readonly said: string[]
  readonly written: Map<string, string>
}

function world(module: unknown = MODULE, yaml = TEN_ZONES, signal = new AbortController().signal): World {
  const said: string[] = []
  const written = new Map<string, string>()
  return {
    said,
    written,
    effects: {
      readFile: async (path) => (path === 'ten.yaml' ? yaml : Promise.reject(new Error(`no ${path}`))),
      writeFile: async (path, text) => void written.set(path, text),
      importModule: async () => ({ default: module }),
      log: (text) => said.push(text),
      progress: () => {},
      now: () => new Date('2030-02-03T10:00:00Z'),
      signal,
    },
  }
}

test('question first, then the cells in the order of the notebook, then the path of the page', async () => {
  const { effects, said, written } = world()
  const run = await runNotebook('notebooks/ten.ts', effects, { workers: 0 })
  expect(run).toMatchObject({ status: 'done', page: 'out/ten.html' })
  expect(said[0]).toBe('How many carriers do ten zones need?')
  const text = said.join('\n')
  const order = [
    'enough for nearly the best output',
    'Ten zones',
    'In Markdown.',
    'Carriers',
    '9 windows simulated with 2 to 4 carriers',
    'Page: out/ten.html',
  ].map((part) => text.indexOf(part))
  expect(order).not.toContain(-1)
  expect(order).toEqual(order.toSorted((a, b) => a - b))
  expect(Math.max(...text.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(80)
  const page = written.get('out/ten.html')!
  for (const part of ['<h1>How many carriers do ten zones need?</h1>', '<code>loopwright notebook notebooks/ten.ts</code>'])
    expect(page.includes(part), part).toBe(true)
})

test('seed, replications, page and command of the caller come before those of the notebook', async () => {
  const { effects, written } = world()
  const run = await runNotebook('ten.ts', effects, { workers: 0, replications: 2, seed: 'other', out: 'a/b.html', command: 'repeat me' })
  expect(run).toMatchObject({ page: 'a/b.html' })
  const footer = /<footer>[\s\S]*<\/footer>/.exec(written.get('a/b.html')!)![0]
  for (const part of ['<code>repeat me</code>', '<code>other</code>', '2 for each count']) expect(footer).toContain(part)
})

test('a scenario with mistakes is told back, and nothing is run', async () => {
  const { effects, said, written } = world(MODULE, TEN_ZONES.replace('speed', 'sped'))
  const run = await runNotebook('ten.ts', effects)
  expect(run).toMatchObject({ status: 'wrong scenario', scenarioFile: 'ten.yaml' })
  expect(run.problems.length).toBeGreaterThan(0)
  expect([said, written.size]).toEqual([[], 0])
})

test('stopped: what is known so far is told, no page is written', async () => {
  const stop = new AbortController()
  stop.abort()
  const { effects, written } = world(MODULE, TEN_ZONES, stop.signal)
  const run = await runNotebook('ten.ts', effects, { workers: 0 })
  expect(run).toMatchObject({ status: 'partial', page: null })
  expect(written.size).toBe(0)
})

test('a module that is no notebook says what to write; mistakes of a notebook are its own', async () => {
  await expect(runNotebook('ten.ts', world({}).effects)).rejects.toThrow('has no notebook as its default export')
  const twice = notebook({ title: 'a', scenario: 'ten.yaml' }, ({ show }) => {
    const cell = { kind: 'prose', id: 'a', markdown: 'a' } as const
    show(cell, cell)
  })
  const run = await runNotebook('ten.ts', world(twice).effects)
  expect(run).toMatchObject({ status: 'done', faults: [{ message: expect.stringContaining('two cells have the id "a"') }] })
})

test('a scenario is found from the folder of the notebook, or else from the working folder', async () => {
  const { effects } = world()
  const files = new Map([['notebooks/ten.yaml', TEN_ZONES]])
  const readFile = async (path: string): Promise<string> => files.get(path) ?? Promise.reject(new Error(`no ${path}`))
  const still = notebook({ title: 'a', scenario: 'ten.yaml' }, () => {})
  const other = { ...effects, readFile, importModule: async () => ({ default: still }) }
  expect(await runNotebook('notebooks/ten.ts', other)).toMatchObject({ status: 'done' })
  files.set('ten.yaml', TEN_ZONES)
  files.delete('notebooks/ten.yaml')
  expect(await runNotebook('notebooks/ten.ts', other)).toMatchObject({ status: 'done' })
  files.clear()
  await expect(runNotebook('notebooks/ten.ts', other)).rejects.toThrow('no notebooks/ten.yaml')
})

test('what the scenario is warned of is said once, however many stories say it', async () => {
  const both = notebook({ title: 'a', scenario: 'ten.yaml' }, async ({ compare, story, show, scenario }) => {
    for (let time = 0; time < 2; time += 1) {
      const { answer, warnings } = story(await compare({ a: scenario, b: scenario }, { replications: 2 }))
      show(answer, ...warnings)
    }
  })
  const { effects } = world(both)
  const { cells } = (await runNotebook('ten.ts', effects, { workers: 0 })) as { readonly cells: readonly { readonly id: string }[] }
  expect(cells.map(({ id }) => id)).toEqual([
    'compare-simulated',
    'compare-answer',
    'warning-length',
    'compare-2-simulated',
    'compare-2-answer',
  ])
})

test('two studies that are warned of the same thing in other words keep both warnings', async () => {
  const warned = notebook({ title: 'a', scenario: 'ten.yaml' }, ({ show }) =>
    show(
      ...['at most 20', 'at most 30', 'at most 20'].map((words) => warningCell('limits', 'The plan is more than the line can make', words)),
    ),
  )
  const { cells } = (await runNotebook('ten.ts', world(warned).effects, { workers: 0 })) as {
    readonly cells: readonly { readonly id: string }[]
  }
  expect(cells.map(({ id }) => id)).toEqual(['warning-limits', 'warning-limits-2'])
})
