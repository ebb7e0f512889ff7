/** The pages of all commands and all notebooks in a real browser: each is made once and looked at wide, narrow, dark, on paper and without scripts. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { type Notebook, runNotebook } from '@loopwright/notebook'
import { expect, test } from 'vitest'
import { main } from '../../packages/cli/src/main.ts'
import { memoryShell } from '../helpers/memoryShell.ts'
import { COMMANDS, goesWith } from '../told/commands.ts'
import { lineNamed } from '../told/lines.ts'
import { TOP } from '../tidy/sources.ts'
import { amiss } from './amiss.ts'
import { inChromium } from './inChromium.ts'
import { axeFaults, openTables } from './looked.ts'
import { visit } from './visited.ts'

const BASE = 'scenarios/outdoor-unit-base-line.yaml'
const DECISION = 'scenarios/base-line-decision/base-line.decision.yaml'
const WEEKS = 'week,units,shifts\nW1,3170,10\nW2,3205,10\nW3,2540,8\n'
const few = (replications: number): string[] => ['--replications', String(replications)]

const files = (): Record<string, string> => {
  const folders = ['scenarios', 'scenarios/base-line-decision', 'tests/told/lines', 'notebooks/data']
  const found = folders.flatMap((folder) =>
    readdirSync(join(TOP, folder), { withFileTypes: true })
      .filter((each) => each.isFile())
      .map(({ name }) => `${folder}/${name}`),
  )
  return { ...Object.fromEntries(found.map((file) => [file, readFileSync(join(TOP, file), 'utf8')])), 'weeks.csv': WEEKS }
}

const LINE = lineNamed('outdoor-unit-base-line')

/** every command on the line with most in it, as it is told; several runs and the choice of carriers tell what a sweep tells, decisions stand below */
const OF_THE_LINE = COMMANDS.filter(
  (one) => goesWith(one, LINE) && one.files === undefined && !['runs', 'carriers'].includes(one.name),
).map(({ name, command = name, words }): [string, string[]] => [name, [command, BASE, ...words(LINE)]])

const PAGES: readonly (readonly [string, readonly string[]])[] = [
  ...OF_THE_LINE,
  // an open line with a spur by hand, a loop on curves, a loop that does not close and needs more than it can
  ['sweep of an open line', ['sweep', 'scenarios/test-and-repair-line.yaml', '--carriers', '3..5', ...few(3)]],
  ['sweep of a loop on curves', ['sweep', 'scenarios/loop-without-corners.yaml', '--carriers', '9..11', ...few(3)]],
  ['forecast far from the plan', ['forecast', 'tests/told/lines/pump-line.yaml', ...few(6)]],
  ['losses of an open line', ['losses', 'scenarios/test-and-repair-line.yaml', ...few(2)]],
  ['payback', ['payback', DECISION, ...few(3)]],
  ['criteria', ['criteria', DECISION, ...few(3)]],
  ['screen', ['screen', DECISION, ...few(3)]],
  ['promise', ['promise', DECISION, ...few(12)]],
  ['acceptance', ['acceptance', DECISION, ...few(40)]],
  ['trial', ['trial', DECISION, ...few(40), '--counts', '5,6,7,8']],
  ['followup', ['followup', DECISION, ...few(12), '--weeks', 'weeks.csv']],
  ['times', ['times', 'notebooks/data/times.csv']],
  ['stoplog', ['stoplog', 'notebooks/data/stops.csv', '--hours', 'Mon-Fri 06:00-14:20']],
  ['mix', ['mix', 'notebooks/data/orders.csv']],
  ['assemble', ['assemble', 'notebooks/data/skeleton.yaml', '--data', 'notebooks/data']],
]

/** All colours are those of one sheet: pages that show them all between them are asked for their contrast, which takes most of the time of a page. */
const COLOURED = ['sweep', 'forecast', 'grid', 'screen', 'times', 'learn-loopwright.ts']

const NOTEBOOKS = readdirSync(join(TOP, 'notebooks')).filter((name) => name.endsWith('.ts'))

const PAGE = 'out/page.html'

/** one for all commands, which share what they have run */
const shell = memoryShell(files())

async function ofCommand(words: readonly string[]): Promise<string> {
  shell.files.delete(PAGE)
  const code = await main([...words, '--out', PAGE], shell)
  const page = shell.files.get(PAGE)
  if (code !== 0 || page === undefined) throw new Error(`${words.join(' ')}: ${code}, ${shell.said.err}`)
  return page
}

async function ofNotebook(name: string): Promise<string> {
  const written = new Map<string, string>()
  const module = (await import(pathToFileURL(join(TOP, 'notebooks', name)).href)) as { default: Notebook }
  const effects = {
    readFile: async (path: string) => readFileSync(join(TOP, path), 'utf8'),
    readBeside: (scenario: string, path: string) => readFileSync(join(TOP, scenario, '..', path), 'utf8'),
    writeFile: async (path: string, text: string) => void written.set(path, text),
    importModule: async () => module,
    log: () => {},
    progress: () => {},
    now: () => new Date('2030-02-03T10:00:00Z'),
    signal: new AbortController().signal,
  }
  const ran = await runNotebook(`notebooks/${name}`, effects, { replications: 4, workers: 0 })
  if (ran.status !== 'done' || ran.page === null) throw new Error(`${name}: ${JSON.stringify(ran.problems)}`)
  return written.get(ran.page)!
}

/** pixels between the margins of a sheet: 210 mm (A4) and 215.9 mm (Letter) less 16 mm on each side, 96 pixels an inch */
const SHEETS = { 'on A4': 672, 'on Letter': 695 }

const WIDE = { width: 1280, height: 800 }

inChromium('every page', (given) => {
  const rows = [
    ...PAGES.map(([name, words]) => ({ name, make: () => ofCommand(words) })),
    ...NOTEBOOKS.map((name) => ({ name, make: () => ofNotebook(name) })),
  ]

  test.each(rows)(
    '$name: nothing cut, nothing on another, no fault, no complaint, no request',
    { tags: 'long' },
    async ({ name, make }) => {
      const file = join(given.folder, `${name.replace(/\W+/g, '-')}.html`)
      writeFileSync(file, await make())
      const address = pathToFileURL(file).href
      const found: Record<string, readonly string[]> = {}
      const coloured = COLOURED.includes(name)
      await visit(given.browser, address, { viewport: WIDE }, async (page) => {
        await openTables(page)
        found.wide = [...(await amiss(page)), ...(await axeFaults(page, { rules: { 'color-contrast': { enabled: coloured } } }))]
        if (coloured) {
          await page.emulateMedia({ colorScheme: 'dark' })
          found.dark = await axeFaults(page, { runOnly: ['color-contrast'] })
        }
        await page.setViewportSize({ width: 360, height: 740 })
        found.narrow = await amiss(page)
        await page.emulateMedia({ media: 'print' })
        await page.evaluate("dispatchEvent(new Event('beforeprint'))")
        for (const [sheet, width] of Object.entries(SHEETS)) {
          await page.setViewportSize({ width, height: 900 })
          found[sheet] = await amiss(page)
        }
        expect(await page.locator('.saves:visible, .choice:visible, summary:visible').count()).toBe(0)
      })
      await visit(given.browser, address, { viewport: WIDE, javaScriptEnabled: false }, async (page) => {
        expect(await page.locator('h1').isVisible()).toBe(true)
        expect(await page.locator('button:visible, input:visible, select:visible').count()).toBe(0)
      })
      expect(Object.fromEntries(Object.entries(found).filter(([, faults]) => faults.length > 0))).toEqual({})
    },
  )
})
