/** A page looked at wide, narrow, dark, on paper and without scripts. */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { expect } from 'vitest'
import { amiss, belowScreen } from './amiss.ts'
import type { InChromium } from './inChromium.ts'
import { canReadSheets, sheetFaults } from './sheets.ts'
import { axeFaults, openTables } from './looked.ts'
import { visit } from './visited.ts'

/** pixels between the margins of a sheet: 210 mm (A4) and 215.9 mm (Letter) less 16 mm on each side, 96 pixels an inch */
const SHEETS = { 'on A4': 672, 'on Letter': 695 }

/** where it is false nothing can look at printed sheets, and nothing can be had that does */
const PRINTS = canReadSheets()

const WIDE = { width: 1280, height: 800 }

/**
 * What is wrong with a page, by the look at it in which it was found; complaints, requests, controls on paper or without scripts fail by themselves.
 *
 * @param coloured  its contrast is looked at too, in the light and in the dark
 */
export async function faultsOfPage(
  { folder, browser }: InChromium,
  name: string,
  html: string,
  coloured: boolean,
): Promise<Readonly<Record<string, readonly string[]>>> {
  const file = join(folder, `${name.replace(/\W+/g, '-')}.html`)
  writeFileSync(file, html)
  const address = pathToFileURL(file).href
  const found: Record<string, readonly string[]> = {}
  await visit(browser, address, { viewport: WIDE }, async (page) => {
    found['first screen'] = await belowScreen(page)
    await openTables(page)
    found.wide = [...(await amiss(page)), ...(await axeFaults(page, { rules: { 'color-contrast': { enabled: coloured } } }))]
    if (coloured) {
      await page.emulateMedia({ colorScheme: 'dark' })
      found.dark = await axeFaults(page, { runOnly: ['color-contrast'] })
    }
    await page.setViewportSize({ width: 360, height: 740 })
    found.narrow = [...(await amiss(page)), ...(await belowScreen(page, '.answer .figures, .answer .first'))]
    await page.emulateMedia({ media: 'print' })
    await page.evaluate("dispatchEvent(new Event('beforeprint'))")
    for (const [sheet, width] of Object.entries(SHEETS)) {
      await page.setViewportSize({ width, height: 900 })
      found[sheet] = await amiss(page)
    }
    expect(await page.locator('.saves:visible, .choice:visible, summary:visible').count()).toBe(0)
    if (PRINTS) {
      await page.evaluate("dispatchEvent(new Event('afterprint'))")
      for (const format of ['A4', 'Letter'] as const) found[`printed on ${format}`] = await sheetFaults(page, folder, format)
    }
  })
  await visit(browser, address, { viewport: WIDE, javaScriptEnabled: false }, async (page) => {
    expect(await page.locator('h1').isVisible()).toBe(true)
    expect(await page.locator('button:visible, input:visible, select:visible').count()).toBe(0)
  })
  return Object.fromEntries(Object.entries(found).filter(([, faults]) => faults.length > 0))
}
