/** The page of the demo's sweep in Firefox. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { MEASURE } from './amiss.ts'
import { type FirefoxPage, findFirefox, startFirefox } from './firefox.ts'
import { pageOf } from './visited.ts'

const path = findFirefox()

// skipped because no Firefox is here: Debian's is firefox-esr, or FIREFOX_PATH names one
describe.skipIf(path === null)('the page in Firefox', { tags: 'long' }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'loopwright-page-'))
  let page: FirefoxPage
  beforeAll(async () => {
    page = await startFirefox(path!)
    await page.size(1280, 800)
    await page.open(await pageOf(folder, 'scenarios/outdoor-unit-base-line.yaml'))
  })
  afterAll(async () => {
    await page?.close()
    rmSync(folder, { recursive: true })
  })

  test('is drawn, wide and narrow, with nothing cut and nothing on another, and says nothing in the console', async () => {
    await expect.poll(() => page.read('document.documentElement.dataset.drawn ?? null')).toBe('all')
    expect(await page.read<number>("document.querySelectorAll('.picture .wide svg').length")).toBeGreaterThan(4)
    expect(await page.read(MEASURE)).toEqual([])
    await page.size(360, 740)
    expect(await page.read(MEASURE)).toEqual([])
    await page.size(1280, 800)
    expect(page.complaints).toEqual([])
  })

  test('a what-if is simulated there, in a worker of the page', async () => {
    const told = "document.querySelector('.livetold')?.textContent ?? ''"
    const before = await page.read<string>(told)
    const fewer = await page.read<string>(`(() => {
      const field = document.querySelector('.liverow input[type="range"]')
      field.value = String(Number(field.value) - 3)
      for (const name of ['input', 'change']) field.dispatchEvent(new Event(name, { bubbles: true }))
      return field.value
    })()`)
    await expect.poll(() => page.read<string>(told)).not.toBe(before)
    expect(Number(fewer)).toBeGreaterThan(0)
    expect(await page.read<string>(told)).toMatch(/\d/)
    expect(page.complaints).toEqual([])
  })
})
