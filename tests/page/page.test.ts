/** The page of the demo's carrier sweep in a real browser, opened from disk. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { STATION_STATES } from '@loopwright/line'
import { carrierSweepStory, writePage } from '@loopwright/notebook'
import { readScenario } from '@loopwright/scenario'
import { sweepCarriers, type SweepCount, type SweepResult } from '@loopwright/study'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { TOP } from '../tidy/sources.ts'
import { findChromium, startChromium } from './chromium.ts'
import { numberIn, shownNumber } from './shown.ts'

const SCENARIO = 'scenarios/outdoor-unit-base-line.yaml'
const COUNTS = Array.from({ length: 13 }, (_, index) => index + 5)
/** of a browser on a busy machine */
const PATIENCE_MS = 300_000
/** every chart drawn */
const DRAWN = 'html[data-drawn="all"]'
const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js')

const path = findChromium()
if (path === null && process.env.CI === 'true') throw new Error('no Chromium: set CHROMIUM_PATH or install one')

// skipped because no Chromium is here and none can be installed; with CI=true that is an error instead
describe.skipIf(path === null)('the page in a browser', () => {
  const folder = mkdtempSync(join(tmpdir(), 'loopwright-page-'))
  const file = join(folder, 'page.html')
  const address = pathToFileURL(file).href
  let browser: Browser
  let result: SweepResult
  let html: string

  beforeAll(async () => {
    const { scenario } = readScenario(readFileSync(join(TOP, SCENARIO), 'utf8'))
    const { line, plan, name } = scenario!
    const swept = await sweepCarriers(line, { counts: COUNTS, replications: 4, plan: plan!.unitsPerWindow }, { seed: '1' })
    result = JSON.parse(JSON.stringify(swept))
    const { question, cells } = carrierSweepStory(scenario!, swept, { scenarioFile: SCENARIO })
    html = await writePage(
      { question, scenarioName: name, date: new Date(0), command: `loopwright sweep ${SCENARIO} --carriers 5..17` },
      cells,
    )
    writeFileSync(file, html)
    browser = await startChromium(path!)
  })

  afterAll(async () => {
    await browser?.close()
    rmSync(folder, { recursive: true })
  })

  /** Opens the page, hands it over, and holds it to no complaint and no request but for itself. */
  async function visit(options: BrowserContextOptions, look: (page: Page) => Promise<void>): Promise<void> {
    const context = await browser.newContext({ ...options, offline: true })
    context.setDefaultTimeout(PATIENCE_MS)
    const page = await context.newPage()
    const complaints: string[] = []
    const requests: string[] = []
    page.on('console', (message) => complaints.push(`${message.type()}: ${message.text()}`))
    page.on('pageerror', (error) => complaints.push(`error: ${error.message}`))
    page.on('request', (request) => requests.push(request.url()))
    await page.goto(address)
    if (options.javaScriptEnabled !== false) await page.waitForSelector(DRAWN)
    await look(page)
    await context.close()
    expect(complaints).toEqual([])
    expect(requests.filter((url) => url !== address && !url.startsWith('data:'))).toEqual([])
  }

  const choose = (page: Page, carriers: number): Promise<void> => page.locator(`input[name="carriers"][value="${carriers}"]`).check()

  test('is one file of at most 1.5 MB', () => {
    expect(Buffer.byteLength(html)).toBeLessThanOrEqual(1.5e6)
  })

  test('draws every chart, with no complaint and no request', async () => {
    await visit({}, async (page) => {
      expect(await page.locator('figure.chart .picture.drawn svg').count()).toBe(6)
      expect(await page.locator('figure.plan .wide svg').isVisible()).toBe(true)
      for (const picture of await page.locator('figure.chart .picture').all()) {
        const alternative = await picture.getAttribute('aria-label')
        expect(alternative?.length).toBeGreaterThan(20)
      }
    })
  })

  test.each([360, 768, 1280])('has nothing to scroll sideways on a screen of %i pixels', async (width) => {
    await visit({ viewport: { width, height: 740 } }, async (page) => {
      await openTables(page)
      const [needed, there] = await page.evaluate<number[]>('[document.documentElement.scrollWidth, document.documentElement.clientWidth]')
      expect(needed).toBe(there)
    })
  })

  test.each(['light', 'dark'] as const)('has no fault that axe-core knows, %s', async (colorScheme) => {
    const context = await browser.newContext({ colorScheme, bypassCSP: true })
    context.setDefaultTimeout(PATIENCE_MS)
    const page = await context.newPage()
    await page.goto(address)
    await page.waitForSelector(DRAWN)
    await openTables(page)
    await page.addScriptTag({ path: AXE })
    const { violations } = await page.evaluate<AxeResult>('axe.run()')
    await context.close()
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`)).toEqual([])
  })

  test('the table by count tells the numbers of the result', async () => {
    await visit({}, async (page) => {
      const rows = await tableOf(page, '#counts')
      expect(rows.slice(1).map((cells) => Number(cells[0]))).toEqual(COUNTS)
      for (const [index, count] of result.counts.entries()) {
        const cells = rows[index + 1]!
        const at = (head: RegExp): string => cells[rows[0]!.findIndex((text) => head.test(text))]!
        const [mean, halfWidth] = at(/mean/).split(' ± ')
        const step = 10 ** Math.max(0, Math.floor(Math.log10(count.mean!.halfWidth)))
        expect(Math.abs(numberIn(mean!) - count.mean!.mean)).toBeLessThanOrEqual(step / 2)
        expect(Math.abs(numberIn(halfWidth!) - count.mean!.halfWidth)).toBeLessThanOrEqual(Math.max(step / 2, 1))
        expect(at(/^P10/)).toSatisfy(shownNumber(count.p10!.point))
        expect(at(/^P90/)).toSatisfy(shownNumber(count.p90!.point))
        expect(at(/met in/)).toSatisfy(shownNumber(count.meetsPlan!.share * 100))
        expect(at(/Law/)).toSatisfy(shownNumber(count.law!.rate * result.lawSeconds))
        expect(at(/Lap/)).toSatisfy(shownNumber(count.lapSecondsMean! / 60))
      }
    })
  })

  test('for every count, chosen by mouse, tables and captions tell that count', async () => {
    await visit({}, async (page) => {
      await openTables(page)
      for (const count of result.counts) {
        await page.locator(`label:has(input[name="carriers"][value="${count.carriers}"])`).click()
        await holdsStations(page, count)
        await holdsZones(page, count)
        const counted = (await tableOf(page, '#spread')).slice(1).reduce((sum, cells) => sum + numberIn(cells[1]!), 0)
        expect(counted).toBe(count.replications)
        for (const id of ['stations', 'plan', 'zones', 'hours']) {
          expect(await page.locator(`#${id} .finding`).textContent()).toMatch(new RegExp(`\\b${count.carriers}\\b`))
        }
      }
    })
  })

  test('the keyboard chooses a count, and it is said aloud', async () => {
    await visit({}, async (page) => {
      const shown = result.answer!.chosen ?? result.answer!.best
      await page.locator(`input[name="carriers"][value="${shown}"]`).focus()
      const before = await page.locator('#stations .picture').innerHTML()
      await page.keyboard.press('ArrowRight')
      await page.waitForSelector(`input[name="carriers"][value="${shown + 1}"]:checked`)
      expect(await page.locator('#carriers [role="status"]').textContent()).toMatch(new RegExp(`${shown + 1}$`))
      const count = result.counts.find(({ carriers }) => carriers === shown + 1)!
      await page.locator('#stations summary').focus()
      await page.keyboard.press('Enter')
      await holdsStations(page, count)
      await expect.poll(() => page.locator('#stations .picture').innerHTML()).not.toBe(before)
      await page.keyboard.press('Tab')
      expect(await page.evaluate('document.activeElement.className')).toBe('scroll')
    })
  })

  test('switching there and back draws the same picture', async () => {
    await visit({}, async (page) => {
      const picture = page.locator('#spread .picture')
      const first = await picture.innerHTML()
      await choose(page, 17)
      await expect.poll(() => picture.innerHTML()).not.toBe(first)
      await choose(page, result.answer!.chosen ?? result.answer!.best)
      await expect.poll(async () => (await picture.innerHTML()).length).toBe(first.length)
    })
  })

  test('print has no controls, opens every table and fits the paper', async () => {
    await visit({}, async (page) => {
      const pdf = await page.pdf({ format: 'A4', tagged: true })
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-')
      await page.emulateMedia({ media: 'print' })
      expect(await page.locator('fieldset.choice').isVisible()).toBe(false)
      expect(await page.locator('.skip').isVisible()).toBe(false)
      await page.evaluate("dispatchEvent(new Event('beforeprint'))")
      expect(await page.locator('details:not([open])').count()).toBe(0)
      expect(await page.locator('figure.plan .paper svg').isVisible()).toBe(true)
      const charts = await page.locator('.picture .chart svg').all()
      const widths = await Promise.all(charts.map(async (svg) => Number(await svg.getAttribute('width'))))
      expect(widths.length).toBe(6)
      expect(Math.max(...widths)).toBeLessThanOrEqual(660)
      // a key that takes another line on paper stands inside its picture
      expect(await page.evaluate(TEXTS_ABOVE)).toEqual([])
      await page.evaluate("dispatchEvent(new Event('afterprint'))")
      expect(await page.locator('details:not([open])').count()).toBeGreaterThan(4)
    })
  })

  test('without scripts the answer, the tables and still pictures are there, and no dead control', async () => {
    await visit({ javaScriptEnabled: false }, async (page) => {
      expect(await page.locator('.answer .first').textContent()).toMatch(/^No count is shown yet to meet the plan of 320 /)
      expect(await page.locator('.howsure .sure').first().isVisible()).toBe(true)
      expect(await page.locator('noscript img').count()).toBe(6)
      for (const image of await page.locator('noscript img').all()) expect((await image.boundingBox())!.height).toBeGreaterThan(50)
      expect(await page.locator('fieldset.choice').isVisible()).toBe(false)
      expect(await page.locator('#counts table').isVisible()).toBe(true)
    })
  })
})

/** texts of charts that stand above the picture they belong to */
const TEXTS_ABOVE = `[...document.querySelectorAll('.picture .chart svg')].flatMap((svg) =>
  [...svg.querySelectorAll('text')].filter((text) => text.getBoundingClientRect().top < svg.getBoundingClientRect().top - 1).map((text) => text.textContent))`

interface AxeResult {
  readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[]
}

async function openTables(page: Page): Promise<void> {
  await page.evaluate("for (const details of document.querySelectorAll('details')) details.open = true")
}

/** Heads, then rows, of the table in a figure; text as people see it. */
async function tableOf(page: Page, holder: string): Promise<string[][]> {
  const rows = await page.locator(`${holder} table tr`).all()
  return await Promise.all(
    rows.map(async (row) =>
      (await row.locator('th, td').allInnerTexts()).map((text) => text.replaceAll('\u00ad', '').replace(/\s+/g, ' ').trim()),
    ),
  )
}

async function holdsStations(page: Page, count: SweepCount): Promise<void> {
  const [heads, ...rows] = await tableOf(page, '#stations')
  expect(rows.length).toBe(count.stations.length)
  let told = 0
  for (const [index, station] of count.stations.entries()) {
    for (const state of STATION_STATES) {
      const column = heads!.findIndex((head) => head.replace(/^waits/, 'waiting').startsWith(state))
      if (column < 0) expect(station.shares[state], `${station.name} ${state} has a share and no column`).toBe(0)
      else {
        expect(rows[index]![column], `${count.carriers} carriers, ${station.name}, ${state}`).toSatisfy(
          shownNumber(station.shares[state] * 100),
        )
        told += 1
      }
    }
  }
  expect(told).toBeGreaterThanOrEqual(count.stations.length * 4)
}

async function holdsZones(page: Page, count: SweepCount): Promise<void> {
  const [, ...rows] = await tableOf(page, '#plan')
  expect(rows.map((cells) => cells[0])).toEqual(count.zones.map(({ name }) => name))
  for (const [index, zone] of count.zones.entries()) expect(rows[index]!.at(-1)).toSatisfy(shownNumber(zone.occupancyMean * 100))
}
