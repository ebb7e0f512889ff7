/** A run played on a page, in a real browser: the carriers stand where the events of the run say. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { TRACE_KINDS } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
import { type TracedRun, traceRun } from '@loopwright/study'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { TOP } from '../tidy/sources.ts'
import { inChromium } from './inChromium.ts'
import { axeFaults } from './looked.ts'
import { PATIENCE_MS, pageOf, visit } from './visited.ts'

const SCENARIOS = ['outdoor-unit-base-line', 'test-and-repair-line', 'ten-zone-learning-loop', 'loop-without-corners'].map(
  (name) => `scenarios/${name}.yaml`,
)
const [DEMO, OPEN] = SCENARIOS as [string, string]

/** where each carrier is drawn: the zone in whose cell its middle lies; −1: in none */
const ZONES_OF_CARRIERS = `[...document.querySelectorAll('.replaycarrier')].map((mark) => {
  if (mark.hasAttribute('hidden')) return null
  const box = mark.querySelector('rect').getBoundingClientRect()
  const [x, y] = [box.left + box.width / 2, box.top + box.height / 2]
  return [...document.querySelectorAll('.replayplan [data-zone]')].findIndex((cell) => {
    const place = cell.querySelector('path, rect').getBoundingClientRect()
    return Math.abs(x - (place.left + place.right) / 2) < 0.6 && Math.abs(y - (place.top + place.bottom) / 2) < 0.6
  })
})`

inChromium('a run played on a page', (given) => {
  async function watch(page: Page): Promise<void> {
    await page.locator('[data-play="load"]').click()
    await page.waitForSelector('.replaycarrier', { state: 'attached' })
    await page.waitForSelector('.replayat', { state: 'attached' })
  }
  const seek = async (page: Page, seconds: number): Promise<void> => {
    await page.locator('.replayscrub').fill(String(seconds))
  }

  test.each(SCENARIOS)('%s: at ten instants each carrier that stands is drawn in its zone', async (file) => {
    const { line } = readScenario(readFileSync(join(TOP, file), 'utf8')).scenario!
    const { trace } = (await traceRun(line, { replication: 0 }, { seed: '1', workers: 0 })) as TracedRun
    await visit(given.browser, await pageOf(given.folder, file), {}, async (page) => {
      await watch(page)
      for (let tenth = 0; tenth < 10; tenth += 1) {
        const now = Math.floor(trace.seconds[Math.floor(((tenth + 0.5) / 10) * trace.kinds.length)]!)
        await seek(page, now)
        const drawn = await page.evaluate<(number | null)[]>(ZONES_OF_CARRIERS)
        for (const [carrier, zone] of drawn.entries()) {
          let stands: number | null = null
          let met = false
          for (let k = 0; k < trace.kinds.length && trace.seconds[k]! <= now; k += 1) {
            if (trace.carriers[k] !== carrier) continue
            const kind = TRACE_KINDS[trace.kinds[k]!]
            if (kind === 'rest') [stands, met] = [trace.places[k]!, true]
            else if (kind === 'move start') [stands, met] = [null, true]
          }
          if (met && stands !== null) expect(zone, `carrier ${carrier} at ${now} s`).toBe(stands < 0 ? null : stands)
        }
      }
    })
  })

  test('it plays, is paused, goes by events, to marks, and the timeline shows the same instant', async () => {
    await visit(given.browser, await pageOf(given.folder, DEMO), {}, async (page) => {
      await watch(page)
      const clock = () => page.locator('.replayclock').textContent()
      const before = await clock()
      await page.locator('[data-play="play"]').click()
      await expect.poll(clock).not.toBe(before)
      // words of the instant before would not be those of the picture
      expect(await page.locator('.replaysays').textContent()).toBe('Pause to read what each station does.')
      await page.locator('[data-play="play"]').click()
      expect(await page.locator('[data-play="play"]').textContent()).toBe('Play')
      const paused = await clock()
      const said = await page.locator('.replaysays').textContent()
      expect(said).toMatch(/S1 \w+.*, S7 \w+/)
      await page.waitForTimeout(200)
      expect(await clock()).toBe(paused)
      const scrub = page.locator('.replayscrub')
      const label = await page.locator('.replaymarks option', { hasText: 'S5 Fan deck and casing is blocked' }).textContent()
      await page.locator('.replaymarks').selectOption({ label: label! })
      expect(await page.locator('.replaysays').textContent()).toContain('S5 blocked')
      const at = Number(await scrub.inputValue())
      await page.locator('[data-play="back"]').click()
      expect(Number(await scrub.inputValue())).toBeLessThanOrEqual(at)
      expect(await page.locator('.replaysays').textContent()).not.toContain('S5 blocked')
      await page.locator('[data-play="on"]').click()
      expect(await page.locator('.replaysays').textContent()).toContain('S5 blocked')
      // a click on the timeline goes there
      const picture = page.locator('.replaytimeline svg').first()
      const [left, right] = (await picture.getAttribute('data-area'))!.split(' ').map(Number)
      const box = (await picture.boundingBox())!
      await picture.click({ position: { x: (((left! + right!) / 2) * box.width) / 720, y: 100 } })
      await expect.poll(clock).toMatch(/^06:0[45]:/)
      const x = Number(await page.locator('.replayat').first().getAttribute('x1'))
      expect(x).toBeCloseTo((left! + right!) / 2, -1)
    })
  })

  test('another setting is watched anew, up to its standstill', async () => {
    await visit(given.browser, await pageOf(given.folder, OPEN), {}, async (page) => {
      await watch(page)
      expect(await page.locator('.replaycarrier').count()).toBe(4)
      expect(await page.locator('.replayoperator').count()).toBe(2)
      await page.locator('[data-key="carriers"] input[type="range"]').fill('5')
      await expect.poll(() => page.locator('.replaycarrier').count()).toBe(5)
      const marks = await page.locator('.replaymarks option').allTextContents()
      expect(marks[1]).toMatch(/^Gridlock \(/)
    })
  })

  test('stops flash only where motion is welcome', async () => {
    for (const reducedMotion of ['reduce', 'no-preference'] as const) {
      await visit(given.browser, await pageOf(given.folder, OPEN), { reducedMotion }, async (page) => {
        await watch(page)
        const label = (await page.locator('.replaymarks option').allTextContents()).find((text) => /^Longest stop/.test(text))
        await page.locator('.replaymarks').selectOption({ label: label! })
        expect(await page.locator('.replaysays').textContent()).toContain('Stopped by')
        const names = await page.evaluate<string[]>(
          `[...document.querySelectorAll('.replaystate.stopped rect, .replayheld.now')].map((mark) => getComputedStyle(mark).animationName)`,
        )
        expect(names.length).toBeGreaterThan(0)
        expect(new Set(names)).toEqual(new Set([reducedMotion === 'reduce' ? 'none' : 'replayflash']))
      })
    }
  })

  test('on a narrow screen, in the dark and with forced colours nothing reaches out, and axe-core knows no fault', async () => {
    const context = await given.browser.newContext({ bypassCSP: true })
    context.setDefaultTimeout(PATIENCE_MS)
    const page = await context.newPage()
    await page.goto(await pageOf(given.folder, DEMO))
    await watch(page)
    // the last one is dark as well
    for (const [width, media] of [
      [360, {}],
      [1280, { colorScheme: 'dark' }],
      [1280, { forcedColors: 'active' }],
    ] as const) {
      await page.setViewportSize({ width, height: 740 })
      await page.emulateMedia(media)
      // drawn anew where the width is another
      await expect
        .poll(() => page.evaluate("document.querySelector('.replayplan svg').getBoundingClientRect().right <= innerWidth"))
        .toBe(true)
      const [needed, there] = await page.evaluate<number[]>('[document.documentElement.scrollWidth, document.documentElement.clientWidth]')
      expect(needed).toBe(there)
      expect(await axeFaults(page, { part: '.replay' })).toEqual([])
    }
    await context.close()
  })
})
