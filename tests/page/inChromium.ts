/** Tests with a real Chromium, and with a folder for their pages. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe } from 'vitest'
import { findChromium, startChromium } from './chromium.ts'

export interface InChromium {
  /** there at once, gone after the last test */
  readonly folder: string
  /** there before hooks and tests; what they leave open in it is closed after them */
  readonly browser: Browser
}

/** One for all files that a process runs, since to start one takes as long as a few pages do. It ends with the process. */
let shared: Promise<Browser> | null = null

/** A block of tests that share a browser and a folder. */
export function inChromium(name: string, tests: (given: InChromium) => void): void {
  const path = findChromium()
  // skipped because no Chromium is here and none can be installed; with CI=true that is an error instead
  describe.skipIf(path === null)(name, () => {
    const folder = mkdtempSync(join(tmpdir(), 'loopwright-page-'))
    let browser: Browser | null = null
    beforeAll(async () => {
      if (!(await shared)?.isConnected()) shared = startChromium(path!)
      browser = await shared
    })
    afterAll(async () => {
      for (const context of browser?.contexts() ?? []) await context.close()
      rmSync(folder, { recursive: true })
    })
    tests({
      folder,
      get browser() {
        if (browser === null) throw new Error('no browser yet: ask for it in a hook or a test')
        return browser
      },
    })
  })
}
