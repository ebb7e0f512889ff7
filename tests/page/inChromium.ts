/** Tests with a real Chromium, and with a folder for their pages. One Chromium serves all files of a process: to start it takes longer than to look at five pages. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe } from 'vitest'
import { findChromium, startChromium } from './chromium.ts'

export interface InChromium {
  /** there at once, gone after the last test */
  readonly folder: string
  /** there before hooks and tests; what is opened in it is closed by who opens it, or is a window of `visited.ts` */
  readonly browser: Browser
}

let kept: Browser | null = null

/** It ends when its process ends. */
async function browserOfProcess(path: string): Promise<Browser> {
  if (kept?.isConnected() !== true) kept = await startChromium(path)
  return kept
}

/** A block of tests that share a browser and a folder. */
export function inChromium(name: string, tests: (given: InChromium) => void): void {
  const path = findChromium()
  // skipped because no Chromium is here and none can be installed; with CI=true that is an error instead
  describe.skipIf(path === null)(name, () => {
    const folder = mkdtempSync(join(tmpdir(), 'loopwright-page-'))
    let browser: Browser | null = null
    beforeAll(async () => {
      browser = await browserOfProcess(path!)
    })
    afterAll(() => rmSync(folder, { recursive: true }))
    tests({
      folder,
      get browser() {
        if (browser === null) throw new Error('no browser yet: ask for it in a hook or a test')
        return browser
      },
    })
  })
}
