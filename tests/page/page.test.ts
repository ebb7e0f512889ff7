/** The page of the demo's carrier sweep in a real browser, opened from disk. Over 300 lines because one browser and one result serve every look at it. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { carrierSweepStory, writePage } from '@loopwright/notebook'
import { readScenario } from '@loopwright/scenario'
import { sweepCarriers, type SweepResult } from '@loopwright/study'
import type { BrowserContextOptions, Page } from 'playwright-core'
import { beforeAll, expect, test } from 'vitest'
import { TOP } from '../tidy/sources.ts'
import { inChromium } from './inChromium.ts'
import { LAW_DASHES } from '../../packages/charts/src/draw/theme.ts'
import { FORCED_LOOK, type ForcedLook, ratio, SHADES } from './colours.ts'
import { holdsStations, holdsZones, openTables, tableOf } from './looked.ts'
import { numberIn, shownNumber } from './shown.ts'
import { DRAWN, visit as visitPage } from './visited.ts'

const SCENARIO = 'scenarios/outdoor-unit-base-line.yaml'
const COUNTS = Array.from({ length: 13 }, (_, index) => index + 5)

inChromium('the page in a browser', (given) => {
  const file = join(given.folder, 'page.html')
  const address = pathToFileURL(file).href
  let result: SweepResult
  let html: string

  beforeAll(async () => {
    const { scenario } = readScenario(readFileSync(join(TOP, SCENARIO), 'utf8'))
    const { line, plan, name } = scenario!
    const swept = await sweepCarriers(line, { counts: COUNTS, replications: 4, plan: plan!.unitsPerWindow }, { seed: '1', workers: 0 })
    result = JSON.parse(JSON.stringify(swept))
    const { question, cells } = carrierSweepStory(scenario!, swept, { scenarioFile: SCENARIO })
    html = await writePage(
      { question, scenarioName: name, date: new Date(0), command: `loopwright sweep ${SCENARIO} --carriers 5..17` },
      cells,
    )
    writeFileSync(file, html)
  })

  const visit = (options: BrowserContextOptions, look: (page: Page) => Promise<void>): Promise<void> =>
    visitPage(given.browser, address, options, look, /^data:/)

  const choose = async (page: Page, carriers: number): Promise<void> => {
    await page.locator(`input[name="carriers"][value="${carriers}"]`).check()
    await page.waitForSelector(DRAWN)
  }

  test('is one file of at most 1.5 MB', () => {
    expect(Buffer.byteLength(html)).toBeLessThanOrEqual(1.5e6)
  })

  test('draws every chart, with no complaint and no request', async () => {
    await visit({}, async (page) => {
      expect(await page.locator('figure.chart .picture .wide svg').count()).toBe(6)
      for (const svg of await page.locator('figure .picture .wide svg').all()) expect(await svg.isVisible()).toBe(true)
      for (const picture of await page.locator('figure.chart .picture').all()) {
        const alternative = await picture.getAttribute('aria-label')
        expect(alternative?.length).toBeGreaterThan(20)
      }
    })
  })

  test('the first screen shows the question, the answer in figures and the whole curve beside them', async () => {
    await visit({ viewport: { width: 1280, height: 800 } }, async (page) => {
      for (const part of ['h1', '.figures', '.answer .first', '#counts .wide svg']) {
        const box = (await page.locator(part).boundingBox())!
        expect(box.y + box.height, part).toBeLessThanOrEqual(800)
      }
      const [figures, curve] = [(await page.locator('.figures').boundingBox())!, (await page.locator('#counts .wide svg').boundingBox())!]
      expect(figures.x + figures.width).toBeLessThanOrEqual(curve.x)
      expect(await page.locator('.figures dt').allInnerTexts()).toEqual([
        'Carriers',
        'Units a shift',
        'Nine of ten shifts',
        'Plan of 320 met',
      ])
    })
    await visit({ viewport: { width: 360, height: 740 } }, async (page) => {
      for (const part of ['h1', '.figures', '.answer .first']) {
        const box = (await page.locator(part).boundingBox())!
        expect(box.y + box.height, part).toBeLessThanOrEqual(740)
      }
    })
  })

  test('nothing moves while the page comes up', async () => {
    for (const viewport of [
      { width: 1280, height: 800 },
      { width: 360, height: 740 },
    ]) {
      await visit({ viewport }, async (page) => {
        await page.waitForTimeout(300)
        const shift = await page.evaluate<number>(
          `new Promise((done) => { let sum = 0; new PerformanceObserver((list) => { for (const entry of list.getEntries()) sum += entry.value }).observe({ type: 'layout-shift', buffered: true }); setTimeout(() => done(sum), 200) })`,
        )
        expect(shift).toBeLessThan(0.02)
      })
    }
  })

  test('in forced colours the chosen count is seen, and what a chart tells apart stays apart', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await visit({ viewport: { width: 1280, height: 800 }, forcedColors: 'active', colorScheme }, async (page) => {
        const look = await page.evaluate<ForcedLook>(FORCED_LOOK)
        // WCAG 2.2: 4.5 : 1 for text, 3 : 1 for what tells a state of a control (SC 1.4.3, 1.4.11)
        expect(ratio(look.chosen.text, look.chosen.ground)).toBeGreaterThanOrEqual(4.5)
        expect(ratio(look.chosen.ground, look.other.ground)).toBeGreaterThanOrEqual(3)
        // each state in a colour of its own, with an edge that stands out from the page
        expect(look.states.length).toBeGreaterThanOrEqual(5)
        expect(new Set(look.states.map(({ fill }) => fill)).size).toBe(look.states.length)
        for (const { stroke } of look.states) expect(ratio(stroke, look.page)).toBeGreaterThanOrEqual(3)
        expect(ratio(look.picked, look.page)).toBeGreaterThanOrEqual(3)
        // the branches of the law
        for (const dash of LAW_DASHES)
          if (dash.length > 0 && dash[1] !== 0) expect(look.dashes).toContain(dash.map((each) => `${each}px`).join(', '))
      })
    }
  })

  test('in the dark a caption that speaks of a strong shade is true: the fuller a zone, the further its ground from the page', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await visit({ viewport: { width: 1280, height: 800 }, colorScheme }, async (page) => {
        expect(await page.locator('#plan .how').textContent()).toContain('the stronger the shade, the longer')
        expect(await page.locator('main').textContent()).not.toMatch(/\b(dark|pal|light)er\b/)
        const shades = await page.evaluate<{ value: number; ground: string; page: string }[]>(SHADES)
        expect(shades.length).toBe(22)
        const strength = shades.toSorted((a, b) => a.value - b.value).map((each) => ratio(each.ground, each.page))
        expect(strength).toEqual(strength.toSorted((a, b) => a - b))
        expect(strength.at(-1)! / strength[0]!).toBeGreaterThan(3)
      })
    }
  })

  test('the table by count tells the numbers of the result', async () => {
    await visit({}, async (page) => {
      const rows = await tableOf(page, '#counts-numbers')
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
        await page.waitForSelector(DRAWN)
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
      await page.waitForSelector(DRAWN)
      expect(await page.locator('#carriers [role="status"]').textContent()).toMatch(new RegExp(`${shown + 1}$`))
      const count = result.counts.find(({ carriers }) => carriers === shown + 1)!
      await page.locator('#stations summary').focus()
      await page.keyboard.press('Enter')
      await holdsStations(page, count)
      await expect.poll(() => page.locator('#stations .picture').innerHTML()).not.toBe(before)
      // a table that does not scroll is no stop on the way
      await page.keyboard.press('Tab')
      expect(await page.evaluate('document.activeElement.className')).not.toBe('scroll')
    })
  })

  test('a click on the curve chooses its count, which stands in the address and is marked; a reload shows it again', async () => {
    await visit({ viewport: { width: 1280, height: 800 } }, async (page) => {
      await page.locator('#counts .wide [data-pick="12"]').click()
      expect(await page.locator('input[name="carriers"]:checked').getAttribute('value')).toBe('12')
      expect(await page.locator('#counts .wide .picked').getAttribute('data-pick')).toBe('12')
      expect(await page.evaluate('location.hash')).toBe('#carriers=12')
      await page.waitForSelector(DRAWN)
      expect(await page.locator('#stations .finding').textContent()).toMatch(/\b12\b/)
      await page.reload()
      await page.waitForSelector(DRAWN)
      expect(await page.locator('#stations .finding').textContent()).toMatch(/\b12\b/)
      expect(await page.locator('.choice .answered input').getAttribute('value')).toBe(String(result.answer!.chosen ?? result.answer!.best))
    })
  })

  test('a link to a section leaves the count as it is, and an address that asks for no count there is shows the answer', async () => {
    await visit({ viewport: { width: 1280, height: 800 } }, async (page) => {
      await choose(page, 12)
      await page.locator('.contents a').first().click()
      expect(await page.evaluate('location.hash')).not.toContain('=')
      expect(await page.locator('input[name="carriers"]:checked').getAttribute('value')).toBe('12')
      expect(await page.locator('#stations .finding').textContent()).toMatch(/\b12\b/)
      await page.evaluate("location.hash = '#carriers=99'")
      const answered = page.locator('.choice .answered input')
      await expect.poll(() => answered.isChecked()).toBe(true)
    })
  })

  test('a mark says its numbers where it is pointed at, and by touch', async () => {
    await visit({ viewport: { width: 1280, height: 800 } }, async (page) => {
      await page.locator('#counts .wide [data-pick="9"]').hover()
      expect(await page.locator('.tip.visible').textContent()).toMatch(/^9 carriers: /)
      await page.keyboard.press('Escape')
      expect(await page.locator('.tip.visible').count()).toBe(0)
    })
    await visit({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true }, async (page) => {
      await page.locator('#zones .narrow [data-tip]').first().tap()
      expect(await page.locator('.tip.visible').textContent()).toMatch(/^Z01: /)
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
      expect(await page.locator('figure.chart:not(.lead) .narrow svg').first().isVisible()).toBe(false)
      await page.setViewportSize({ width: 640, height: 900 })
      const charts = await page.locator('.picture .lw-drawing:visible').all()
      const widths = await Promise.all(charts.map(async (svg) => (await svg.boundingBox())!.width))
      expect(widths.length).toBe(6)
      expect(Math.max(...widths)).toBeLessThanOrEqual(640)
      await page.evaluate("dispatchEvent(new Event('afterprint'))")
      expect(await page.locator('details:not([open])').count()).toBeGreaterThan(4)
    })
  })

  // common practice, no source: the printable area of a sheet is the sheet without the margins that the page asks for, 18 mm and 16 mm; 96 pixels an inch
  test.each([
    ['A4, 210 mm by 297 mm', 210, 297],
    ['Letter, 216 mm by 279 mm', 215.9, 279.4],
  ])('the first printed page stands alone: answer, picture, promise, limits, what it rests on, cautions: %s', async (_, wide, high) => {
    const pixels = (millimetres: number): number => Math.floor((millimetres / 25.4) * 96)
    await visit({ viewport: { width: pixels(wide - 32), height: 900 } }, async (page) => {
      await page.emulateMedia({ media: 'print' })
      await page.evaluate("dispatchEvent(new Event('beforeprint'))")
      for (const part of ['.figures', '.answer .first', '#counts .narrow svg', '#limited-by', '.handout']) {
        const box = (await page.locator(part).boundingBox())!
        expect(box.y + box.height, part).toBeLessThanOrEqual(pixels(high - 36))
      }
      const told = await page.locator('.handout').textContent()
      for (const words of ['Repeat with loopwright sweep', 'hash', '22 zones', 'Screening only']) expect(told).toContain(words)
      expect(await page.evaluate("getComputedStyle(document.querySelector('.handout')).breakAfter")).toBe('page')
    })
    await visit({}, async (page) => expect(await page.locator('.handout').isVisible()).toBe(false))
  })

  test('without scripts the answer, the tables and still pictures are there, and no dead control', async () => {
    await visit({ javaScriptEnabled: false }, async (page) => {
      expect(await page.locator('.answer .first').textContent()).toMatch(/^No count is shown yet to meet the plan of 320 /)
      expect(await page.locator('.howsure .sure').first().isVisible()).toBe(true)
      const charts = await page.locator('.picture .lw-drawing:visible').all()
      expect(charts.length).toBe(6)
      for (const chart of charts) expect((await chart.boundingBox())!.height).toBeGreaterThan(50)
      expect(await page.locator('fieldset.choice').isVisible()).toBe(false)
      expect(await page.locator('#counts-numbers table').isVisible()).toBe(true)
    })
  })
})
