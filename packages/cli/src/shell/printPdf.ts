/** A page as PDF, printed by a browser of this machine that needs no window. */
import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { accessSync, constants } from 'node:fs'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { Failure } from './shell.ts'

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'microsoft-edge', 'chromium-headless-shell']
const ELSEWHERE = ['/Applications/Chromium.app/Contents/MacOS/Chromium', '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome']
const QUIET = [
  '--headless',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]
/** milliseconds */
const PATIENCE = 120_000

/** Where one is: CHROMIUM_PATH, else along PATH, else where it is usually put; null: none was found. */
export function foundChromium(variables: Readonly<Record<string, string | undefined>>): string | null {
  const named = variables.CHROMIUM_PATH
  if (named !== undefined && named !== '') return named
  const folders = (variables.PATH ?? '').split(delimiter).filter((folder) => folder !== '')
  return [...NAMES.flatMap((name) => folders.map((folder) => join(folder, name))), ...ELSEWHERE].find(canRun) ?? null
}

export const NO_CHROMIUM =
  'no Chromium was found, which prints the page: install one, or name it by CHROMIUM_PATH. Without one, write the page by --out and print it from any browser: it is made for paper, too'

/**
 * @param path  of the browser
 * @throws Failure  where it does not print
 */
export async function printPdf(path: string, html: string, isRoot: boolean): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), 'loopwright-print-'))
  try {
    const [page, made] = [join(folder, 'page.html'), join(folder, 'page.pdf')]
    await writeFile(page, onA4(html))
    const words = [
      ...QUIET,
      // the superuser has no sandbox there
      ...(isRoot ? ['--no-sandbox'] : []),
      `--user-data-dir=${join(folder, 'profile')}`,
      '--no-pdf-header-footer',
      `--print-to-pdf=${made}`,
      pathToFileURL(page).href,
    ]
    const fault = await ended(path, words)
    const bytes = await readFile(made).catch(() => null)
    if (bytes === null) throw new Failure(`"${path}" did not print the page${fault === '' ? '' : `: ${fault}`}`)
    return bytes
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5 })
  }
}

const PAPER = '@page { size: A4 }'

/** The page says nothing of its paper, which the browser would take for Letter; its policy lets in what it knows by its hash. */
function onA4(html: string): string {
  const hash = createHash('sha256').update(PAPER).digest('base64')
  return html.replace("style-src '", `style-src 'sha256-${hash}' '`).replace('</head>', `<style>${PAPER}</style></head>`)
}

/** Resolves with what was said on the way where it failed; '': it did not. */
function ended(path: string, words: readonly string[]): Promise<string> {
  return new Promise((done) => {
    const child = spawn(path, words, { stdio: ['ignore', 'ignore', 'pipe'] })
    let said = ''
    const late = setTimeout(() => child.kill('SIGKILL'), PATIENCE)
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      said = `${said}${text}`.slice(-500)
    })
    child.on('error', (error) => done(error.message))
    child.on('close', (code) => {
      clearTimeout(late)
      done(code === 0 ? '' : said.trim().split('\n').at(-1)!)
    })
  })
}

function canRun(file: string): boolean {
  try {
    accessSync(file, constants.X_OK)
    return true
  } catch {
    return false
  }
}
