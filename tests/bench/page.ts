/**
 * How fast pages are in a real browser: `npm run bench:page [-- --rounds 3]`, from the top folder. The demo's sweep, a loop of 200 zones for the frames of a
 * replay, and the demo's notebook while it is written; each figure is the median of some loads, at the speed of this machine and at a quarter of it. The browser slows the page alone, not its worker.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { carrierSweepStory, writePage } from '@loopwright/notebook'
import { readScenario } from '@loopwright/scenario'
import { sweepCarriers } from '@loopwright/study'
import type { Browser, Page } from 'playwright-core'
import { findChromium, startChromium } from '../page/chromium.ts'
import { scenarioOf } from '../helpers/scenarioTexts.ts'
import { typedOption } from '../helpers/typedOption.ts'
import { savesOf } from './watched.ts'

const DEMO = 'scenarios/outdoor-unit-base-line.yaml'
const COUNTS = Array.from({ length: 13 }, (_, index) => index + 5)
const SLOWER = [1, 4]
/** milliseconds of a replay that are looked at */
const WATCHED_MS = 3000

/** a loop of so many zones with a station on every tenth, as full as it runs well */
const longLoop = (zones: number): string => `format: 1
question: How does a long loop look?
name: Long loop
warmup: 10 min
length: 1 h
drive: { speed: 15 m/min }
carriers: { count: ${zones / 2}, length: 1 m }
loop: ${zones} zones of 1.5 m
stations:
  S1: { zone: Z001, load: { place: 20 s } }
${Array.from({ length: zones / 10 - 2 }, (_, k) => `  S${k + 2}: { zone: Z${String((k + 1) * 10).padStart(3, '0')}, work: { fit: 20 s ± 20 % } }`).join('\n')}
  S${zones / 10}: { zone: Z${String(zones - 10).padStart(3, '0')}, unload: { takeOff: 20 s } }
`

/** What a page is held to; times in milliseconds. */
interface Figures {
  lastChart: number
  longestTask: number
  layoutShift: number
  countSwitch: number
  firstWhatIf: number
  curve: number
}

const OBSERVED = `globalThis.seen = { tasks: [], shift: 0, drawn: 0 };
new PerformanceObserver((list) => { for (const { duration } of list.getEntries()) seen.tasks.push(duration) }).observe({ type: 'longtask', buffered: true });
new PerformanceObserver((list) => { for (const { value, hadRecentInput } of list.getEntries()) if (!hadRecentInput) seen.shift += value }).observe({ type: 'layout-shift', buffered: true });
new MutationObserver((_, own) => { if (document.documentElement?.dataset.drawn) { seen.drawn = performance.now(); own.disconnect() } }).observe(document, { attributes: true, subtree: true, attributeFilter: ['data-drawn'] })`

/** from a press of the key to the frame that shows what it has done */
const SWITCHED = `new Promise((done) => {
  const radio = document.querySelector('input[name="carriers"][value="12"]')
  const from = performance.now()
  radio.click()
  document.body.getBoundingClientRect()
  requestAnimationFrame(() => setTimeout(() => done(performance.now() - from)))
})`

const CHANGED = `new Promise((done) => {
  const slider = document.querySelector('[data-key="S6.time"] input[type="range"]')
  const [from, at] = [performance.now(), {}]
  new MutationObserver((_, own) => {
    if (document.querySelector('.livechanges')) at.first ??= performance.now() - from
    if (document.querySelector('#counts.changed')) at.curve ??= performance.now() - from
    if (at.first && at.curve) { own.disconnect(); done(at) }
  }).observe(document.body, { subtree: true, childList: true, attributes: true })
  slider.value = slider.min
  slider.dispatchEvent(new Event('input', { bubbles: true }))
})`

const FRAMES = `new Promise((done) => {
  const took = []
  const ask = globalThis.requestAnimationFrame
  globalThis.requestAnimationFrame = (call) => ask((now) => { const from = performance.now(); call(now); document.body.getBoundingClientRect(); took.push(performance.now() - from) })
  document.querySelector('[data-play="play"]').click()
  setTimeout(() => { document.querySelector('[data-play="play"]').click(); globalThis.requestAnimationFrame = ask; done(took) }, ${WATCHED_MS})
})`

async function sweepPage(folder: string, file: string, text: string, counts: readonly number[], replications: number): Promise<string> {
  const { notes } = readScenario(text)
  const scenario = scenarioOf(text)
  const { line, plan, name } = scenario
  const request = { counts, replications, plan: plan?.unitsPerWindow ?? null }
  const swept = await sweepCarriers(line, request, { seed: '1' })
  const { question, cells } = carrierSweepStory(scenario, swept, {
    scenarioFile: file,
    scenarioText: text,
    ...(notes === null ? {} : { notes }),
  })
  const html = await writePage({ question, scenarioName: name, date: new Date(0), command: 'loopwright sweep' }, cells)
  const written = join(folder, `${name}.html`)
  writeFileSync(written, html)
  process.stdout.write(`${name}: ${(Buffer.byteLength(html) / 1000).toFixed(0)} kB\n`)
  return pathToFileURL(written).href
}

async function opened<T>(browser: Browser, address: string, slower: number, look: (page: Page) => Promise<T>): Promise<T> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, offline: true })
  const page = await context.newPage()
  await page.addInitScript(OBSERVED)
  await (await context.newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: slower })
  await page.goto(address)
  await page.waitForSelector('html[data-drawn="all"]')
  await page.waitForTimeout(500)
  const found = await look(page)
  await context.close()
  return found
}

async function figuresOf(page: Page): Promise<Figures> {
  const seen = await page.evaluate<{ tasks: number[]; shift: number; drawn: number }>('seen')
  const countSwitch = await page.evaluate<number>(SWITCHED)
  await page.locator('.live').scrollIntoViewIfNeeded()
  await page.waitForSelector('.livetold .figures')
  const { first, curve } = await page.evaluate<{ first: number; curve: number }>(CHANGED)
  return {
    lastChart: seen.drawn,
    longestTask: Math.max(0, ...seen.tasks),
    layoutShift: seen.shift,
    countSwitch,
    firstWhatIf: first,
    curve,
  }
}

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!

const WORDS: Readonly<Record<keyof Figures, string>> = {
  lastChart: 'time to the last chart, ms (below 1,000)',
  longestTask: 'longest task, ms (0: none above 50)',
  layoutShift: 'shift of the layout (below 0.02)',
  countSwitch: 'switch of the count, ms (below 50)',
  firstWhatIf: 'first figures of a change, ms (at most 300)',
  curve: 'first curve of a change, ms',
}

const rounds = Number(typedOption('rounds') ?? 5)
const path = findChromium()
if (path === null) throw new Error('no Chromium: set CHROMIUM_PATH or install one')
const folder = mkdtempSync(join(tmpdir(), 'loopwright-bench-'))
const browser = await startChromium(path)
try {
  const demo = await sweepPage(folder, DEMO, readFileSync(DEMO, 'utf8'), COUNTS, 30)
  const long = await sweepPage(folder, 'long.yaml', longLoop(200), [100], 2)
  for (const slower of SLOWER) {
    process.stdout.write(`\n${slower === 1 ? 'at the speed of this machine' : `at a ${slower}th of it`}, median of ${rounds}\n`)
    const found: Figures[] = []
    for (let round = 0; round < rounds; round += 1) found.push(await opened(browser, demo, slower, figuresOf))
    for (const [name, words] of Object.entries(WORDS)) {
      const value = median(found.map((each) => each[name as keyof Figures]))
      process.stdout.write(`  ${words}: ${value.toFixed(name === 'layoutShift' ? 4 : 0)}\n`)
    }
    const frames = await opened(browser, long, slower, async (page) => {
      await page.locator('[data-play="load"]').click()
      await page.waitForSelector('.replayat', { state: 'attached' })
      return await page.evaluate<number[]>(FRAMES)
    })
    const worst = frames.toSorted((a, b) => a - b)[Math.floor(frames.length * 0.95)]!
    process.stdout.write(
      `  frame of a replay, 200 zones, ms (at most 8): ${median(frames).toFixed(1)}, 95 of 100 within ${worst.toFixed(1)}\n`,
    )
  }
  const { wall, browser: own } = await savesOf(browser, folder, rounds, () => Number(process.hrtime.bigint()) / 1e6)
  process.stdout.write(
    `\nfrom a save of the demo's notebook to the page, ms (at most 500): ${median(wall).toFixed(0)}, of which the browser's thread ${median(own).toFixed(0)}\n`,
  )
} finally {
  await browser.close()
  rmSync(folder, { recursive: true })
}
