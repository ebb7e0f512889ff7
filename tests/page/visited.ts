/** Pages of small studies, opened in a browser and held to no complaint and no request. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { carrierSweepStory, writePage } from '@loopwright/notebook'
import { readScenario } from '@loopwright/scenario'
import { sweepCarriers } from '@loopwright/study'
import type { Browser, BrowserContextOptions, ConsoleMessage, Page, Request } from 'playwright-core'
import { expect } from 'vitest'
import { TOP } from '../tidy/sources.ts'

/** of a browser on a busy machine */
export const PATIENCE_MS = 300_000
/** every chart drawn, of the option that is chosen */
export const DRAWN = 'html[data-drawn="all"]:not([data-late])'
const VIEWPORT = { width: 1280, height: 720 }

/**
 * The page of a small sweep of a scenario: its address.
 *
 * @param folder  where it is written, once
 */
export async function pageOf(folder: string, file: string, text = readFileSync(join(TOP, file), 'utf8')): Promise<string> {
  const written = join(folder, `${file.replaceAll('/', '-')}-${text.length}.html`)
  const address = pathToFileURL(written).href
  if (existsSync(written)) return address
  const { scenario } = readScenario(text)
  const { line, plan, name } = scenario!
  const request = { counts: [line.carriers.count], replications: 2, plan: plan?.unitsPerWindow ?? null }
  const swept = await sweepCarriers(line, request, { seed: '1', workers: 0 })
  const { question, cells } = carrierSweepStory(scenario!, swept, { scenarioFile: file, scenarioText: text })
  const html = await writePage({ question, scenarioName: name, date: new Date(0), command: 'loopwright sweep' }, cells)
  writeFileSync(written, html)
  return address
}

/** Nobody looks into them; by what they were opened with. */
const windows = new Map<string, Page[]>()

/** A window of its own, or one that is empty again: to open one takes longer than to draw a page. */
async function windowOf(browser: Browser, key: string, options: BrowserContextOptions): Promise<Page> {
  const kept = windows.get(key)?.pop()
  if (kept !== undefined && !kept.isClosed()) {
    const { viewport, colorScheme = 'light', reducedMotion = 'no-preference', forcedColors = 'none' } = options
    await kept.emulateMedia({ media: 'screen', colorScheme, reducedMotion, forcedColors })
    await kept.setViewportSize(viewport ?? VIEWPORT)
    return kept
  }
  const context = await browser.newContext({ viewport: VIEWPORT, ...options, offline: true })
  context.setDefaultTimeout(PATIENCE_MS)
  return await context.newPage()
}

/**
 * Opens a page, hands it over, and holds it to no complaint and no request but for itself.
 *
 * @param own  what a page that carries an engine may ask of itself
 */
export async function visit(
  browser: Browser,
  address: string,
  options: BrowserContextOptions,
  look: (page: Page) => Promise<void>,
  own = /^(data|blob):/,
): Promise<void> {
  const key = JSON.stringify(options)
  const page = await windowOf(browser, key, options)
  const complaints: string[] = []
  const requests: string[] = []
  const complain = (message: ConsoleMessage): void => void complaints.push(`${message.type()}: ${message.text()}`)
  const fail = (error: Error): void => void complaints.push(`error: ${error.message}`)
  const ask = (request: Request): void => void requests.push(request.url())
  page.on('console', complain).on('pageerror', fail).on('request', ask)
  await page.goto(address)
  if (options.javaScriptEnabled !== false) await page.waitForSelector(DRAWN)
  await look(page)
  page.off('console', complain).off('pageerror', fail).off('request', ask)
  // nothing of it goes on, nor is pointed at
  await page.goto('about:blank')
  await page.mouse.move(0, 0)
  windows.set(key, [...(windows.get(key) ?? []), page])
  expect(complaints).toEqual([])
  expect(requests.filter((url) => url.replace(/#.*/, '') !== address.replace(/#.*/, '') && !own.test(url))).toEqual([])
}
