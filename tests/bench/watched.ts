/** From a save to the page: how long a notebook that is being written takes, in the wall's time and in that of the browser's thread. */
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { start } from '../cli/spawned.ts'
import { TOP } from '../tidy/sources.ts'

const SCENARIO = 'outdoor-unit-base-line.yaml'
const NOTEBOOK = 'how-many-carriers.ts'
/** words of the notebook that each save changes */
const WORDS = 'Too few carriers'

export interface Saves {
  /** milliseconds from the save until the page shows it, of each save */
  readonly wall: readonly number[]
  /** milliseconds of the browser's main thread, of each save */
  readonly browser: readonly number[]
}

/**
 * Saves the demo's notebook again and again, a few words of it changed.
 *
 * @param now  milliseconds
 */
export async function savesOf(browser: Browser, folder: string, rounds: number, now: () => number): Promise<Saves> {
  copyFileSync(join(TOP, 'scenarios', SCENARIO), join(folder, SCENARIO))
  const text = readFileSync(join(TOP, 'notebooks', NOTEBOOK), 'utf8').replace('../scenarios/', '')
  const file = join(folder, NOTEBOOK)
  writeFileSync(file, text)
  const spawned = start(['notebook', NOTEBOOK, '--watch', '--replications', '20', '--workers', '1'], folder)
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, bypassCSP: true })
  try {
    const page = await context.newPage()
    const thread = await context.newCDPSession(page)
    await thread.send('Performance.enable', { timeDomain: 'threadTicks' })
    const busy = async (): Promise<number> =>
      (await thread.send('Performance.getMetrics')).metrics.find(({ name }) => name === 'TaskDuration')!.value * 1000
    await page.goto(/http:\S+/.exec(await spawned.saidOnOut('Page: http'))![0])
    const shows = (words: string): Promise<unknown> =>
      page.waitForFunction(
        `[...document.querySelector('iframe:not(.next)')?.contentDocument?.querySelectorAll('.prose') ?? []].some((prose) => prose.textContent.includes(${JSON.stringify(words)}))`,
        null,
        { polling: 10, timeout: 120_000 },
      )
    await shows(WORDS)
    await page.waitForTimeout(3000)
    const [wall, own]: [number[], number[]] = [[], []]
    for (let round = 0; round < rounds; round += 1) {
      const [from, before] = [now(), await busy()]
      writeFileSync(file, text.replace(WORDS, `Save ${round}. ${WORDS}`))
      await shows(`Save ${round}.`)
      wall.push(now() - from)
      await page.waitForTimeout(1000)
      own.push((await busy()) - before)
    }
    return { wall, browser: own }
  } finally {
    await context.close()
    spawned.interrupt()
    await spawned.ended
  }
}
