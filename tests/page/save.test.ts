/** What a reader takes out of a page, and what the command hands out, with a real browser. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { writePage } from '@loopwright/notebook'
import { beforeAll, expect, test } from 'vitest'
import { loopwright } from '../cli/spawned.ts'
import { cells } from '../helpers/pageCells.ts'
import { inChromium } from './inChromium.ts'

inChromium('taken out of a page', (given) => {
  const file = join(given.folder, 'page.html')

  beforeAll(async () => {
    writeFileSync(file, await writePage({ question: 'How many?', scenarioName: 'Ring', date: new Date(0), command: 'loopwright' }, cells))
  })

  test('a figure as SVG, PNG and CSV, a sentence with its number', async () => {
    const context = await given.browser.newContext({ offline: true, permissions: ['clipboard-read', 'clipboard-write'] })
    const page = await context.newPage()
    const errors: string[] = []
    page.on('console', (message) => message.type() === 'error' && errors.push(message.text()))
    await page.goto(pathToFileURL(file).href)
    await page.waitForSelector('html[data-drawn]')
    const figure = page.locator('figure').first()
    const saved = async (label: string): Promise<Buffer> => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        figure.getByRole('button', { name: label, exact: true }).click(),
      ])
      expect(download.suggestedFilename()).toMatch(/^[\w-]+\.(svg|png|csv)$/)
      return readFileSync(await download.path())
    }
    const svg = (await saved('Save this figure as SVG')).toString('utf8')
    expect(svg).toMatch(/^<svg /)
    expect(svg).not.toMatch(/var\(--|class=|<script/)
    expect([...(await saved('Save this figure as PNG')).subarray(1, 4)]).toEqual([80, 78, 71])
    const csv = (await saved('Save these numbers as CSV')).toString('utf8')
    expect(csv.split('\r\n').length).toBeGreaterThan(2)
    await figure.getByRole('button', { name: 'Copy sentence, with its number' }).click()
    await expect.poll(() => figure.locator('[role=status]').textContent()).toBe('Copied.')
    expect(await page.evaluate('navigator.clipboard.readText()')).toContain(`${await figure.locator('.finding').textContent()}\n(How many?`)
    // the answer, by the keyboard
    const answer = page.locator('.answer')
    await answer.getByRole('button', { name: 'Copy answer, with its number' }).focus()
    await page.keyboard.press('Enter')
    await expect.poll(() => answer.locator('.said [role=status]').textContent()).toBe('Copied.')
    expect(await page.evaluate('navigator.clipboard.readText()')).toContain(`${await answer.locator('.first').textContent()}\n(How many?`)
    expect(errors).toEqual([])
    await context.close()
  })

  test('the command prints the page as a tagged PDF, and hands out figures and slides', async () => {
    const at = (name: string): string => join(given.folder, name)
    const { code, err } = await loopwright(
      'sweep',
      'scenarios/outdoor-unit-base-line.yaml',
      ...['--carriers', '9,10', '--replications', '2', '--workers', '1'],
      ...['--pdf', at('page.pdf'), '--svg', at('svg'), '--png', at('png'), '--pptx', at('slides.pptx')],
    )
    expect([code, err.includes(`PDF: ${at('page.pdf')}`)]).toEqual([0, true])
    const pdf = readFileSync(at('page.pdf'), 'latin1')
    expect(pdf.startsWith('%PDF-')).toBe(true)
    for (const part of ['/StructTreeRoot', '/MarkInfo']) expect(pdf).toContain(part)
    // ISO 216: A4 is 210 mm × 297 mm, which is 595 × 842 points
    expect(pdf).toMatch(/\/MediaBox \[0 0 59[456](\.\d+)? 84[123](\.\d+)?\]/)
    expect(readFileSync(at('slides.pptx')).subarray(0, 2).toString()).toBe('PK')
    expect(readFileSync(at('svg/counts.svg'), 'utf8')).toMatch(/^<svg /)
  })
})
