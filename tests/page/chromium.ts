/** A real Chromium for the tests of the page. */
import { spawnSync } from 'node:child_process'
import { accessSync, constants } from 'node:fs'
import { delimiter, join } from 'node:path'
import { type Browser, chromium } from 'playwright-core'

/** The first is the same engine without windows of its own, which takes a quarter less of the processor. */
const NAMES = ['chromium-headless-shell', 'chromium', 'chromium-browser', 'google-chrome']
const ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** Where Chromium is: CHROMIUM_PATH, else along PATH, else installed where we may; null: it cannot be had here, which with CI=true is an error. */
export function findChromium(): string | null {
  const named = process.env.CHROMIUM_PATH
  if (named !== undefined && named !== '') return named
  const found = alongPath() ?? (install('chromium', 'chromium-headless-shell', 'fonts-dejavu-core') ? alongPath() : null)
  if (found === null && process.env.CI === 'true') throw new Error('no Chromium: set CHROMIUM_PATH or install one')
  return found
}

export async function startChromium(path: string): Promise<Browser> {
  return await chromium.launch({ executablePath: path, args: ARGUMENTS })
}

function alongPath(): string | null {
  const folders = (process.env.PATH ?? '').split(delimiter)
  const candidates = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)))
  return candidates.find(isExecutable) ?? null
}

function isExecutable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK)
    return true
  } catch {
    return false
  }
}

/** Where we may: whether Debian's packages are there now. */
export function install(...packages: readonly string[]): boolean {
  if (process.getuid?.() !== 0) return false
  const run = (...parts: string[]): boolean => spawnSync('apt-get', parts, { stdio: 'ignore' }).status === 0
  return run('update') && run('install', '-y', ...packages)
}
