/** Pages of small studies, opened in a browser and held to no complaint and no request. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { carrierSweepStory, writePage } from '@loopwright/notebook'
import { readScenario } from '@loopwright/scenario'
import { sweepCarriers } from '@loopwright/study'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { expect } from 'vitest'
import { TOP } from '../tidy/sources.ts'

/** of a browser on a busy machine */
export const PATIENCE_MS = 300_000
/** every chart drawn */
export const DRAWN = 'html[data-drawn="all"]'

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
  expect(requests.filter((url) => url.replace(/#.*/, '') !== address.replace(/#.*/, '') && !own.test(url))).toEqual([])
}
