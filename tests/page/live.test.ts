/** The page that goes on simulating, in a real browser: the engine’s numbers in it are those of the command. Over 300 lines because one page serves every way to touch it. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { beforeAll, expect, test } from 'vitest'
import { main } from '../../packages/cli/src/main.ts'
import { keptRuns } from '../helpers/keptRuns.ts'
import { memoryShell } from '../helpers/memoryShell.ts'
import { TOP } from '../tidy/sources.ts'
import { inChromium } from './inChromium.ts'
import { axeFaults, openTables } from './looked.ts'
import { PATIENCE_MS, pageOf, visit } from './visited.ts'

const DEMO = 'scenarios/outdoor-unit-base-line.yaml'
const OPEN = 'scenarios/test-and-repair-line.yaml'

interface Line {
  readonly name: string
  readonly units: readonly number[]
}

inChromium('a page that goes on simulating', (given) => {
  let demo: string
  beforeAll(async () => {
    demo = await pageOf(given.folder, DEMO)
  })

  /** The lines as they are told when so many replications are in. */
  async function linesAt(page: Page, replications: number, changed = true): Promise<Line[]> {
    await page.locator('.live').scrollIntoViewIfNeeded()
    await expect
      .poll(async () => {
        const [told, marks] = await page.evaluate<[number, number]>(
          `[Number(document.querySelector('.live').dataset.replications ?? 0), document.querySelectorAll('.livechanges').length]`,
        )
        return told >= replications && marks > 0 === changed
      })
      .toBe(true)
    return JSON.parse((await page.locator('.live').getAttribute('data-lines'))!) as Line[]
  }

  /** What the command gives that stands on the page, typed as it stands there. */
  async function typed(page: Page, files: Readonly<Record<string, string>>): Promise<{ lines: Line[]; replications: number }> {
    const command = await page.locator('.livetold code').last().textContent()
    return await runCommand(command!, files)
  }
  async function runCommand(command: string, files: Readonly<Record<string, string>>): Promise<{ lines: Line[]; replications: number }> {
    const shell = memoryShell(files, { store: keptRuns() })
    const words = [...command.matchAll(/'((?:[^']|'\\'')*)'|(\S+)/g)].map(([, quoted, bare]) => quoted?.replaceAll(`'\\''`, "'") ?? bare!)
    expect(await main([...words.slice(1), '--json'], shell), shell.said.err).toBe(0)
    return JSON.parse(shell.said.out) as { lines: Line[]; replications: number }
  }
  /** units of the first replications, by line */
  const firstOf = (lines: readonly Line[], count: number): (readonly number[])[] => lines.map(({ units }) => units.slice(0, count))
  const field = (key: string): string => `[data-key="${key}"] input[type="text"]`
  const slider = (key: string): string => `[data-key="${key}"] input[type="range"]`

  test('a slider gives the numbers of the command, which stands beside them; the file and the slider are both told', async () => {
    await visit(given.browser, demo, {}, async (page) => {
      await page.locator(slider('carriers')).fill('14')
      const lines = await linesAt(page, 40)
      const command = await typed(page, { [DEMO]: readFileSync(join(TOP, DEMO), 'utf8') })
      expect(command.replications).toBeGreaterThanOrEqual(40)
      expect(command.lines.map(({ name }) => name)).toEqual(['Outdoor-unit base line', 'what if'])
      expect(firstOf(lines, 40)).toEqual(firstOf(command.lines, 40))
      expect(await page.locator('[data-key="carriers"]').textContent()).toContain('file: 12')
      expect(await page.locator(field('carriers')).inputValue()).toBe('14')
      expect(await page.locator('[data-key="carriers"].changed').count()).toBe(1)
      expect(await page.locator('.live .figures .changed').count()).toBeGreaterThan(0)
      expect(page.url()).toContain('if.carriers=14')
    })
  })

  test('by the keyboard: a step of the slider, a field, then Escape goes back to the file', async () => {
    await visit(given.browser, demo, {}, async (page) => {
      const finding = await page.locator('#counts .finding').textContent()
      await page.locator(slider('carriers')).focus()
      await page.keyboard.press('ArrowRight')
      await linesAt(page, 5)
      expect(await page.locator(field('carriers')).inputValue()).toBe('13')
      await page.locator('.livegroup summary', { hasText: 'Stations' }).focus()
      await page.keyboard.press('Enter')
      await page.locator(field('S6.time')).fill('55')
      await page.keyboard.press('Enter')
      expect(await page.locator(field('S6.time')).inputValue()).toBe('55 s')
      await expect.poll(() => page.locator('.livechanges').textContent()).toContain('S6 Tightness test: ')
      // the curve follows, beside what it was; what goes on telling the file says so
      await expect.poll(() => page.locator('#counts .finding').textContent()).toMatch(/^With the change /)
      // both in one look: more replications redraw both
      const [beside, own] = await page.evaluate<string[]>(
        `['.livecurve', '#counts'].map((place) => document.querySelector(place + ' .picture .wide svg').innerHTML)`,
      )
      expect(beside).toBe(own)
      expect(await page.locator('.offile:visible').count()).toBe(
        await page.locator('.answer, main figure:not(.livecurve, #counts)').count(),
      )
      await page.keyboard.press('Escape')
      await linesAt(page, 5, false)
      // the picture and its words are drawn after the numbers
      await expect.poll(() => page.locator('#counts .finding').textContent()).toBe(finding)
      expect(await page.locator('.offile:visible').count()).toBe(0)
      expect(await page.locator(field('carriers')).inputValue()).toBe('12')
      expect(page.url()).not.toContain('#')
    })
  })

  test('by touch, on a narrow screen, where nothing reaches out of the page', async () => {
    await visit(given.browser, demo, { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true }, async (page) => {
      await page.locator('.livegroup summary', { hasText: 'Stations' }).tap()
      await page.locator('[data-key="S5.zone"] select').selectOption('Z14')
      await linesAt(page, 10)
      const box = (await page.locator(slider('carriers')).boundingBox())!
      await page.touchscreen.tap(box.x + box.width - 2, box.y + box.height / 2)
      await expect.poll(() => page.locator(field('carriers')).inputValue()).toBe('18')
      // a carrier in each place to wait: the numbers are those of the command
      await expect.poll(() => page.locator('.livetold code').last().textContent()).toContain('carriers.count=18')
      const lines = await linesAt(page, 5)
      const command = await typed(page, { [DEMO]: readFileSync(join(TOP, DEMO), 'utf8') })
      expect(firstOf(lines, 5)).toEqual(firstOf(command.lines, 5))
      await page.evaluate("for (const details of document.querySelectorAll('.live details')) details.open = true")
      const [needed, there] = await page.evaluate<number[]>('[document.documentElement.scrollWidth, document.documentElement.clientWidth]')
      expect(needed).toBe(there)
    })
  })

  test('what is kept is a variation that the command reads, with the same numbers; a link brings the setting back', async () => {
    await visit(given.browser, demo, {}, async (page) => {
      await page.evaluate("for (const details of document.querySelectorAll('.live details')) details.open = true")
      await page.locator(field('S6.time')).fill('56 s')
      await page.locator('[data-key="release"] select').selectOption('train')
      await page.locator(field('share.small')).fill('50 %')
      await page.locator(field('testFault.long')).fill('4 min')
      await page.locator(field('plan')).fill('330 per shift')
      await page.locator('#live-own-path').fill('drive.stagger')
      await page.locator('#live-own-value').fill('0.3 s')
      await page.locator('[data-act="own"]').click()
      // what was set before goes on being told until the first runs of the last setting are in
      await expect.poll(() => page.locator('.livetold code').last().textContent()).toContain('drive.stagger=0.3 s')
      const lines = await linesAt(page, 20)
      const told = await typed(page, { [DEMO]: readFileSync(join(TOP, DEMO), 'utf8') })
      expect(firstOf(lines, 20)).toEqual(firstOf(told.lines, 20))
      await page.locator('[data-act="keep"]').click()
      const [download] = await Promise.all([page.waitForEvent('download'), page.locator('[data-act="save"]').click()])
      const file = readFileSync((await download.path())!, 'utf8')
      expect(download.suggestedFilename()).toBe('outdoor-unit-base-line-what-if.yaml')
      const words = 'loopwright compare kept.yaml --variations "what if" --replications 20'.replaceAll('"', "'")
      expect(firstOf((await runCommand(words, { 'kept.yaml': file })).lines, 20)).toEqual(firstOf(lines, 20))
      const address = page.url()
      await visit(given.browser, address, {}, async (again) => {
        expect(firstOf(await linesAt(again, 20), 20)).toEqual(firstOf(lines, 20))
        expect(await again.locator(field('testFault.long')).inputValue()).toBe('4 min')
      })
    })
  })

  test('a station is dragged to another zone, or taken there by keys, with the result of the command', async () => {
    await visit(given.browser, demo, { viewport: { width: 1280, height: 1000 } }, async (page) => {
      await page.locator('.live').scrollIntoViewIfNeeded()
      await page.locator('.livegroup summary', { hasText: 'Stations' }).click()
      const handle = page.locator('.zonehandle', { hasText: 'S5' })
      await handle.waitFor()
      await handle.scrollIntoViewIfNeeded()
      const middle = async (selector: string): Promise<[number, number]> => {
        const box = (await page.locator(selector).boundingBox())!
        return [box.x + box.width / 2, box.y + box.height / 2]
      }
      const [x, y] = await middle('.zonehandle:has-text("S5") circle')
      const [toX, toY] = await middle('.livezones [data-zone="13"] path >> nth=0')
      await page.mouse.move(x, y)
      await page.mouse.down()
      await page.mouse.move((x + toX) / 2, (y + toY) / 2)
      await page.mouse.move(toX, toY)
      await page.mouse.up()
      expect(await page.locator('[data-key="S5.zone"] select').inputValue()).toBe('Z14')
      const lines = await linesAt(page, 20)
      const words = `loopwright compare ${DEMO} --set 'what if: stations.S5.zone=Z14' --replications 20`
      const command = await runCommand(words, { [DEMO]: readFileSync(join(TOP, DEMO), 'utf8') })
      expect(firstOf(lines, 20)).toEqual(firstOf(command.lines, 20))
      await handle.focus()
      await page.keyboard.press('ArrowRight')
      expect(await page.locator('[data-key="S5.zone"] select').inputValue()).toBe('Z15')
      expect(await handle.getAttribute('aria-valuetext')).toBe('Z15')
      await linesAt(page, 5, false)
    })
  })

  test('two settings beside each other, with the difference between them', async () => {
    await visit(given.browser, demo, {}, async (page) => {
      await page.locator(slider('carriers')).fill('10')
      await linesAt(page, 5)
      await page.locator('[data-act="aside"]').click()
      await page.locator(slider('carriers')).fill('13')
      await expect
        .poll(() => page.locator('.livetold').textContent())
        .toMatch(/“B” makes [\d.]+ (more|fewer) units a shift than “A” \(98\.3\s%: /)
      const lines = await linesAt(page, 5)
      expect(lines.map(({ name }) => name)).toEqual(['Outdoor-unit base line', 'A', 'B'])
    })
  })

  test('an impossible value is told as the command tells it, and nothing else is shown', async () => {
    await visit(given.browser, demo, {}, async (page) => {
      await page.locator(field('carriers')).fill('40')
      await page.keyboard.press('Enter')
      await page.waitForSelector('.liverefused')
      const shell = memoryShell({ [DEMO]: readFileSync(join(TOP, DEMO), 'utf8') })
      await main(['compare', DEMO, '--set', 'what if: carriers.count=40'], shell)
      const flat = (text: string): string => text.replace(/\s+/g, ' ').trim()
      expect(flat(shell.said.err)).toContain(flat((await page.locator('.liverefused').textContent())!))
      expect(await page.locator(field('carriers')).getAttribute('aria-invalid')).toBe('true')
      expect(await page.locator('.livetold table').count()).toBe(0)
      await page.keyboard.press('Escape')
      await linesAt(page, 5, false)
    })
  })

  test('a standstill is told, with its reason', async () => {
    await visit(given.browser, await pageOf(given.folder, OPEN), {}, async (page) => {
      await page.locator(slider('carriers')).fill('5')
      await expect.poll(() => page.locator('.livetold').textContent()).toMatch(/GRIDLOCK after .*fills its own exit/)
    })
  })

  test('thirty quick changes leave one worker, which tells of the last', async () => {
    await visit(given.browser, demo, {}, async (page) => {
      const workers = new Set<unknown>()
      page.on('worker', (worker) => {
        workers.add(worker)
        worker.on('close', () => workers.delete(worker))
      })
      for (let step = 0; step < 30; step += 1) await page.locator(slider('carriers')).fill(String(5 + (step % 14)))
      await expect.poll(() => page.locator('.livechanges').allInnerTexts()).toEqual(['Carriers: 12 → 6'])
      await linesAt(page, 40)
      expect(page.workers()).toHaveLength(1)
    })
  })

  test('without script, or without workers, the page is the still one', async () => {
    await visit(given.browser, demo, { javaScriptEnabled: false }, async (page) => {
      expect(await page.locator('[data-part="what-if"]').isVisible()).toBe(false)
      expect(await page.locator('.contents a[href="#what-if"]').isVisible()).toBe(false)
      expect(await page.locator('.answer').isVisible()).toBe(true)
    })
    const context = await given.browser.newContext()
    await context.addInitScript('delete globalThis.Worker')
    const page = await context.newPage()
    await page.goto(demo)
    await page.waitForSelector('html[data-drawn]')
    expect(await page.locator('[data-part="what-if"]').isVisible()).toBe(false)
    await context.close()
  })

  test('hostile text of a scenario or an address is shown, never run', async () => {
    const evil = `"</script><img src=x onerror=document.title=1>"`
    const text = readFileSync(join(TOP, DEMO), 'utf8')
      .replace('name: Outdoor-unit base line', `name: ${evil}`)
      .replace('name: Tightness test', `name: ${evil}`)
      .replace('title: Tester fault', `title: ${evil}`)
    const address = await pageOf(given.folder, DEMO, text)
    const hash = new URLSearchParams({
      'if.S6.zone': '<img src=x onerror=document.title=1>',
      'if.=a"><script>document.title=1</script>': '<b>1',
    })
    await visit(given.browser, `${address}#${hash}`, {}, async (page) => {
      await page.waitForSelector('.liverefused')
      expect(await page.title()).not.toBe('1')
      expect(await page.locator('.live img, .live b, .live script').count()).toBe(0)
      await page.keyboard.press('Escape')
      await page.locator(slider('carriers')).fill('13')
      await linesAt(page, 5)
      await page.locator('[data-act="keep"]').click()
      await page.waitForSelector('.liveyaml')
      // the worker has read it, the replay draws it, and the curve of the page is told of the change
      await page.locator('[data-play="load"]').click()
      await page.waitForSelector('.replaycarrier', { state: 'attached' })
      expect(await page.locator('main img, main b, main script').count()).toBe(0)
      expect(await page.title()).not.toBe('1')
    })
  })

  test('has no fault that axe-core knows, light and dark', async () => {
    const context = await given.browser.newContext({ bypassCSP: true })
    context.setDefaultTimeout(PATIENCE_MS)
    const page = await context.newPage()
    await page.goto(`${demo}#if.carriers=14`)
    await linesAt(page, 10)
    await page.locator('[data-act="keep"]').click()
    await page.waitForSelector('.liveyaml')
    await openTables(page)
    // page.test.ts looks at the rest
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await axeFaults(page, { part: '.live' }), colorScheme).toEqual([])
    }
    await context.close()
  })
})
