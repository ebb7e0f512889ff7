/** The pages of all commands in a real browser: each is made once and looked at in every way. Those of notebooks: tests/notebooks.test.ts. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { main } from '../../packages/cli/src/main.ts'
import { keptRuns } from '../helpers/keptRuns.ts'
import { memoryShell } from '../helpers/memoryShell.ts'
import { COMMANDS, goesWith } from '../told/commands.ts'
import { lineNamed } from '../told/lines.ts'
import { TOP } from '../tidy/sources.ts'
import { faultsOfPage } from './faultsOfPage.ts'
import { inChromium } from './inChromium.ts'

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

/** All colours are those of one sheet: pages that show them all between them (and a notebook with a chart of its own) are asked for their contrast, which takes most of the time of a page. */
const COLOURED = ['sweep', 'forecast', 'grid', 'screen', 'times']

const PAGE = 'out/page.html'

/** one for all commands */
const shell = memoryShell(files(), { store: keptRuns() })

async function ofCommand(words: readonly string[]): Promise<string> {
  shell.files.delete(PAGE)
  const code = await main([...words, '--out', PAGE], shell)
  const page = shell.files.get(PAGE)
  if (code !== 0 || page === undefined) throw new Error(`${words.join(' ')}: ${code}, ${shell.said.err}`)
  return page
}

inChromium('every page', (given) => {
  test.each(PAGES)('%s: nothing cut, nothing on another, no fault, no complaint, no request', { tags: 'long' }, async (name, words) => {
    expect(await faultsOfPage(given, name, await ofCommand(words), COLOURED.includes(name))).toEqual({})
  })
})
