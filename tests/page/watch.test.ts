/** The window of a notebook that is being written, in a real browser. */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { scenarioText } from '../helpers/scenarioText.ts'
import { type Spawned, start } from '../cli/spawned.ts'
import { inChromium } from './inChromium.ts'
import { axeFaults } from './looked.ts'

const STUDY = `import { notebook } from '@loopwright/notebook'

export default notebook({ title: 'A', scenario: 'line.yaml' }, async ({ sweep, story, show, prose }) => {
  const tale = story(await sweep({ carriers: [2, 3, 4], replications: 3 }))
  show(...tale.cells)
  prose('## The end\\n\\nFirst words.')
})
`
inChromium('the window of a notebook', (given) => {
  const study = join(given.folder, 'study.ts')
  let spawned: Spawned

  beforeAll(() => {
    writeFileSync(join(given.folder, 'line.yaml'), scenarioText())
    writeFileSync(study, STUDY)
    spawned = start(['notebook', 'study.ts', '--watch', '--workers', '1'], given.folder)
  })
  afterAll(async () => {
    spawned.interrupt()
    await spawned.ended
  })

  test('what changed comes into the page, which stays where the reader was', async () => {
    const address = /http:\S+/.exec(await spawned.saidOnOut('Page: http'))![0]
    const page = await given.browser.newPage({ viewport: { width: 1000, height: 600 } })
    const errors: string[] = []
    page.on('console', (message) => message.type() === 'error' && errors.push(message.text()))
    page.on('pageerror', (error) => errors.push(error.message))
    const asked = new Set<string>()
    page.on('request', (request) => asked.add(new URL(request.url()).origin))
    await page.goto(address)
    const note = page.locator('#note')
    await expect.poll(() => note.textContent()).toContain('All parts are fresh')
    const frame = page.frameLocator('iframe:not(.next)')
    await expect.poll(() => frame.locator('body').textContent()).toContain('First words.')

    await frame
      .locator('.finding')
      .last()
      .evaluate((heading) => {
        heading.scrollIntoView({ behavior: 'instant' })
        for (const details of heading.ownerDocument.querySelectorAll('details')) details.open = true
      })
    const opened = await frame.locator('details[open]').count()
    const place = () =>
      frame
        .locator('.finding')
        .last()
        .evaluate((heading) => Math.round(heading.getBoundingClientRect().top))
    const before = await place()
    writeFileSync(study, STUDY.replace('First words', 'Other words'))
    await expect.poll(() => frame.locator('body').textContent()).toContain('Other words.')
    expect(Math.abs((await place()) - before)).toBeLessThan(3)
    expect(await frame.locator('details[open]').count()).toBe(opened)

    writeFileSync(study, STUDY.replace('replications', 'replication'))
    await expect.poll(() => note.textContent()).toContain('1 part failed')
    await expect.poll(() => frame.locator('.fault').first().textContent()).toContain('study.ts:4:')
    await expect.poll(() => frame.locator('[data-part-state="failed"]').count()).toBeGreaterThan(0)
    writeFileSync(study, STUDY.replace('async ({', 'async ({ ,'))
    await expect.poll(() => page.locator('#fault').textContent()).toContain('study.ts:3:')
    writeFileSync(study, STUDY)
    await expect.poll(() => note.textContent()).toContain('All parts are fresh')
    await expect.poll(() => page.locator('#fault').textContent()).toBe('')

    // the window lets no script in: the same document without its policy; its heading is that of the page in the frame
    const still = await given.browser.newPage({ bypassCSP: true })
    await still.goto(address)
    expect(await axeFaults(still, { iframes: false, rules: { 'page-has-heading-one': { enabled: false } } })).toEqual([])
    expect(errors).toEqual([])
    expect([...asked]).toEqual([address.replace(/\/$/, '')])
  })
})
