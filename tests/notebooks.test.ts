/** Every notebook runs through the real runner once, tells the numbers of its results, and writes its page, which is looked at in a real browser. Over 300 lines because all that is asked of one run stands here. */
import { readdirSync, readFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { join } from 'node:path'
import { type Cell, type Effects, notebook, type Notebook, type NotebookContext, runNotebook } from '@loopwright/notebook'
import ts from 'typescript'
import { beforeAll, describe, expect, test } from 'vitest'
import { keptRuns } from './helpers/keptRuns.ts'
import { faultsOfPage } from './page/faultsOfPage.ts'
import { inChromium } from './page/inChromium.ts'
import { TOP } from './tidy/sources.ts'

const FOLDER = join(TOP, 'notebooks')
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.ts'))
/** enough to tell every part of a story */
const REPLICATIONS = 4
/** of the comparison; enough to show what it is about */
const COMPARED = 10
/** it draws a chart of its own: its contrast is looked at too */
const COLOURED = 'learn-loopwright.ts'

interface Told {
  readonly cells: readonly Cell[]
  /** as it is written */
  readonly html: string
  /** its HTML, with blanks that do not break as blanks */
  readonly page: string
  readonly said: string
  /** what the studies of the notebook gave, in their order */
  readonly results: readonly unknown[]
}

const told = new Map<string, Promise<Told>>()

/** Run once, however many tests read it. */
function run(name: string): Promise<Told> {
  const known = told.get(name) ?? runNow(name, name === 'station-order.ts' ? COMPARED : REPLICATIONS)
  told.set(name, known)
  return known
}

/** Runs a notebook file; the results of its studies are taken down on their way to it. */
async function runNow(name: string, replications: number): Promise<Told> {
  const module = (await import(pathToFileURL(join(FOLDER, name)).href)) as { default: Notebook }
  const results: unknown[] = []
  const listened = notebook(module.default.head, (context) => module.default.body(listening(context, results)))
  const said: string[] = []
  const written = new Map<string, string>()
  const effects: Effects = {
    readFile: async (path) => readFileSync(join(TOP, path), 'utf8'),
    readBeside: (scenario, path) => readFileSync(join(TOP, scenario, '..', path), 'utf8'),
    writeFile: async (path, text) => void written.set(path, text),
    importModule: async () => ({ default: listened }),
    log: (text) => said.push(text),
    progress: () => {},
    now: () => new Date('2030-02-03T10:00:00Z'),
    signal: new AbortController().signal,
    store: keptRuns(),
  }
  const ran = await runNotebook(`notebooks/${name}`, effects, { replications, workers: 0 })
  if (ran.status !== 'done' || ran.page === null) throw new Error(`${name}: ${JSON.stringify(ran.problems)}`)
  const html = written.get(ran.page)!
  return { cells: ran.cells, html, page: html.replaceAll('\u00a0', ' '), said: said.join('\n'), results }
}

function listening(context: NotebookContext, results: unknown[]): NotebookContext {
  const heard =
    <A extends readonly unknown[], R>(study: (...given: A) => Promise<R>) =>
    async (...given: A): Promise<R> => {
      const result = await study(...given)
      results.push(result)
      return result
    }
  const { carriers, compare, order, losses, drivers, forecast } = context
  return {
    ...context,
    carriers: heard(carriers),
    compare: heard(compare),
    order: heard(order),
    losses: heard(losses),
    drivers: heard(drivers),
    forecast: heard(forecast),
  }
}

const one = <T>(told: Told, kind: string): T => told.results.find((result) => (result as { kind: string }).kind === kind) as T
const plain = (value: number, decimals: number): string => value.toFixed(decimals).replace(/\B(?=(\d{3})+$)/g, '\u202f')

describe('how-many-carriers', () => {
  let told: Told
  beforeAll(async () => {
    told = await run('how-many-carriers.ts')
  })

  interface Carriers {
    readonly law: { readonly lapSeconds: number; readonly exchangeSeconds: number; readonly carriersLow: number }
    readonly counts: readonly { readonly carriers: number; readonly units: readonly number[] }[]
  }

  test('prose and table have the numbers of the study', () => {
    const { law, counts } = one<Carriers>(told, 'carrier study')
    expect(told.page).toContain(
      `One carrier alone needs ${(law.lapSeconds / 60).toFixed(1)} min for a lap. Up to ${law.carriersLow} carriers`,
    )
    expect(told.page).toContain(`(${law.exchangeSeconds.toFixed(1)} s from one carrier to the next)`)
    const table = told.cells.find(({ id }) => id === 'counts')
    if (table?.kind !== 'chart') throw new Error('no table of counts')
    expect(table.views.of[0]!.content.table.rows.map(({ cells }) => cells[0])).toEqual(counts.map(({ carriers }) => String(carriers)))
  })

  test('the page is written', () => expect(told.said).toContain('Page: out/how-many-carriers.html'))
})

describe('station-order', () => {
  let told: Told
  beforeAll(async () => {
    told = await run('station-order.ts')
  })

  interface Compared {
    readonly lines: readonly { readonly name: string; readonly units: readonly number[] }[]
  }
  const gains = (): readonly { readonly name: string; readonly mean: number }[] => {
    const [today, ...others] = one<Compared>(told, 'comparison').lines
    return others.map(({ name, units }) => ({
      name,
      mean: units.reduce((sum, made, world) => sum + made - today!.units[world]!, 0) / units.length,
    }))
  }

  test('a proposal that is as good on paper loses in the same shifts, by the numbers that were simulated', () => {
    expect(gains().every(({ mean }) => mean < 0)).toBe(true)
    const averages = told.cells.find(({ id }) => id === 'compare-averages')
    if (averages?.kind !== 'table') throw new Error('no table of averages')
    const rows = averages.views.of[0]!.content.rows.map(({ cells }) => cells.slice(1).join())
    expect(new Set(rows).size).toBe(1)
    const answer = told.cells.find(({ kind }) => kind === 'answer')
    if (answer?.kind !== 'answer') throw new Error('no answer')
    for (const { name, mean } of gains()) {
      const sentence = answer.sentences.find((each) => each.startsWith(`“${name}” makes `))!
      const size = /makes ([\d.]+) fewer units a shift/.exec(sentence)![1]!
      expect(size).toBe(Math.abs(mean).toFixed(size.split('.')[1]?.length ?? 0))
    }
  })

  test('the choice among orders is told with its own numbers, and drawn', () => {
    const { candidates, winner } = one<{ candidates: unknown[]; winner: number | null }>(told, 'station order')
    expect(candidates.length).toBeGreaterThanOrEqual(12)
    const answer = told.cells.find(({ kind }) => kind === 'answer')
    expect(answer?.kind === 'answer' && answer.sentences[0]).toContain(`${candidates.length - 1} alternatives`)
    const plans = told.cells.flatMap(({ id, kind }) => (kind === 'plan' ? [id.split('-').at(-1)] : []))
    expect(plans).toEqual(['today', winner === 0 ? 'next' : 'chosen'])
  })

  test('the page is written, with both studies in its footer', () => {
    expect(told.page).toContain('<h1>Does another order of the stations make more?</h1>')
    expect(told.page.match(/<dt>Simulated/g)).toHaveLength(2)
    expect(told.said).toContain('Page: out/station-order.html')
  })
})

describe('throughput-forecast', () => {
  let told: Told
  beforeAll(async () => {
    told = await run('throughput-forecast.ts')
  })

  interface Spread {
    readonly units: readonly number[]
  }

  test('the answer has the numbers of the simulated shifts', () => {
    const { shift } = one<{ shift: Spread }>(told, 'forecast')
    const inOrder = [...shift.units].sort((a, b) => a - b)
    expect(inOrder).toHaveLength(REPLICATIONS)
    // type 7: between the first and the second of four, at 0.3
    const p10 = inOrder[0]! + 0.3 * (inOrder[1]! - inOrder[0]!)
    expect(told.said).toContain(`nine of ten shifts\nmake at least ${plain(p10, 0)}.`)
    expect(told.page).toContain(`P10 of a shift is ${plain(p10, 0)} units`)
    const met = shift.units.filter((made) => made >= 320).length
    expect(told.page).toContain(`The plan of 320 is met in ${met} of ${REPLICATIONS} shifts simulated`)
    const short = shift.units.map((made) => Math.max(0, 320 - made))
    // net 450 minutes
    const rate = shift.units.reduce((sum, made) => sum + made, 0) / REPLICATIONS / 450
    const minutes = short.reduce((sum, each) => sum + each, 0) / REPLICATIONS / rate
    expect(told.page).toContain(
      minutes === 0 ? 'No overtime was needed' : `takes ${plain(minutes, minutes < 9.95 ? 1 : 0)} min of overtime`,
    )
  })

  test('losses and drivers are told with their own numbers', () => {
    const { forecast, ideal } = one<{ forecast: { mean: number }; ideal: { mean: number } }>(told, 'losses')
    const table = told.cells.find(({ id }) => id === 'losses-causes')
    if (table?.kind !== 'chart') throw new Error('no losses')
    const rows = table.views.of[0]!.content.table.rows.map(({ cells }) => cells[1]!)
    const [best, made] = [rows[0]!, rows.at(-1)!]
    expect(told.page).toMatch(
      new RegExp(`the loop makes ${made} units a shift\\. Without the \\d+ causes in the table it would make ${best}, so`),
    )
    // rounded by its interval, which four shifts leave wide
    expect(Math.abs(Number(made.split(' ± ')[0]) - forecast.mean)).toBeLessThanOrEqual(5)
    expect(Math.abs(Number(best.split(' ± ')[0]) - ideal.mean)).toBeLessThanOrEqual(5)
    interface Driver {
      readonly name: string
      readonly unitsOfStep: number
      readonly elasticity: { readonly mean: number }
    }
    const { drivers, limits } = one<{ drivers: Driver[]; limits: number[] }>(told, 'drivers')
    const first = drivers[limits[0]!]!
    const brings = new RegExp(`Of what takes time, 1\\s% less of ${first.name} brings most: ([\\d.]+)\\s% more output\\.`).exec(told.page)
    // rounded by its interval
    expect(Math.abs(Number(brings?.[1]) - first.elasticity.mean)).toBeLessThanOrEqual(0.05)
    const ranking = told.cells.find(({ id }) => id === 'drivers-ranking')
    if (ranking?.kind !== 'chart') throw new Error('no ranking of drivers')
    expect(ranking.views.of[0]!.content.table.rows.map(({ cells }) => [cells[0], cells.at(-1)])).toEqual(
      drivers.map(({ name, unitsOfStep }) => [name, unitsOfStep.toFixed(1).replace('-', '−')]),
    )
  })

  test('the page is written, with its three studies in the footer', () => {
    expect(told.page).toContain('<h1>What throughput may be promised?</h1>')
    expect(told.page.match(/<dt>Simulated/g)).toHaveLength(3)
  })
})

describe('learn-loopwright', () => {
  let told: Told
  beforeAll(async () => {
    told = await run('learn-loopwright.ts')
  })

  test('nothing fails, and the reader may touch three values', () => {
    expect(told.cells.filter(({ kind }) => kind === 'fault')).toEqual([])
    for (const label of ['Carriers on the loop', 'Assembly takes', 'Speed of the drive']) expect(told.page).toContain(label)
  })

  test('what it says of the law is what can be counted by hand', () => {
    // four stations, 110 s of work; twelve zones of 1.2 m at 0.2 m/s are 72 s: common practice, no source
    expect(told.page).toContain('round in 182 s')

    expect(told.page).toMatch(/units an hour, and from\s+4 carriers on/)
  })

  test('its own chart has the means of the grid', () => {
    const chart = told.cells.find(({ id }) => id === 'chart-1')
    if (chart?.kind !== 'chart') throw new Error('no chart')
    expect(chart.views.of[0]!.content.finding).toMatch(
      /^With the same mean time, chance costs most with \d+ carriers: [\d.]+ units an hour/,
    )
    expect(chart.views.of[0]!.content.table.rows).toHaveLength(20)
  })
})

describe('from-stopwatch-to-signature', () => {
  let told: Told
  beforeAll(async () => {
    told = await run('from-stopwatch-to-signature.ts')
  })

  test('goes from what was measured to the page for the signature, in this order', () => {
    const headings = told.cells.flatMap((cell) => (cell.kind === 'prose' ? (cell.markdown.match(/^## .*/gm) ?? []) : []))
    const asked = ['What was measured', 'What stood', 'What is ordered', 'What may be promised', 'What it is worth']
    const then = ['Which one the team favours', 'What needs a closer look', 'How it will be accepted', 'The page for the signature']
    const at = [...asked, ...then].map((heading) => headings.indexOf(`## ${heading}`))
    expect(at.every((place, index) => place >= 0 && (index === 0 || place > at[index - 1]!))).toBe(true)
    const said = told.said.replace(/\s+/g, ' ')
    expect(said.indexOf('Promised of “as drawn”: at least')).toBeGreaterThan(said.indexOf('The page for the signature'))
    expect(told.cells.at(-1)).toMatchObject({ kind: 'prose', markdown: expect.stringMatching(/^Signed for the money/) })
  })

  test('the money is that of the decision file beside the data, and the caution of the screening stands before its figures', () => {
    const money = told.cells.find(({ id }) => id === 'payback-money')
    if (money?.kind !== 'table') throw new Error('no table of money')
    const { rows, columns } = money.views.of[0]!.content
    const at = columns.flatMap(({ fields }) => fields.map(({ name }) => name))
    for (const [index, invested] of [96_000, 118_000].entries()) {
      const [annual, months] = ['annual', 'payback_months'].map((name) => rows[index]!.values[at.indexOf(name)] as number)
      expect(months).toBeCloseTo((12 * invested) / annual!, 9)
    }
    const ids = told.cells.map(({ id }) => id)
    expect(ids.indexOf('caution-screening')).toBeLessThan(ids.indexOf('screen-1-compared'))
    expect(told.page).toContain('It is not a risk assessment and not a statement of compliance.')
  })
})

inChromium('pages of notebooks', (given) => {
  test.each(files)('%s: nothing cut, nothing on another, no fault, no complaint, no request', { tags: 'long' }, async (name) =>
    expect(await faultsOfPage(given, name, (await run(name)).html, name === COLOURED)).toEqual({}),
  )
})

describe('numbers in prose are computed, never typed', () => {
  /** Digits in the running text of a template, outside `${…}`. */
  const typed = (source: string): string[] => {
    const found: string[] = []
    const visit = (node: ts.Node): void => {
      if (ts.isTemplateHead(node) || ts.isTemplateMiddle(node) || ts.isTemplateTail(node) || ts.isNoSubstitutionTemplateLiteral(node)) {
        found.push(...(node.text.match(/\S*\d\S*/g) ?? []))
      }
      node.forEachChild(visit)
    }
    visit(ts.createSourceFile('notebook.ts', source, ts.ScriptTarget.Latest))
    return found
  }

  test.each(files)('%s', (name) => expect(typed(readFileSync(join(FOLDER, name), 'utf8'))).toEqual([]))
  test('a typed number is found', () => expect(typed('prose(`makes $' + '{n + 12} of 320 units`)')).toEqual(['320']))
  test('there are notebooks', () =>
    expect(files).toEqual(expect.arrayContaining(['how-many-carriers.ts', 'station-order.ts', 'throughput-forecast.ts'])))
})
