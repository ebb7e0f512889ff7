/** What every page carries along: its script and its style, and the hashes by which the browser knows them. Beside `browser`, as its bundle is. */
import { createHash } from 'node:crypto'
import { fileURLToPath } from 'node:url'
import { deflateRawSync } from 'node:zlib'

export interface PageAssets {
  readonly script: string
  readonly scriptHash: string
  /** stands before the body, so that nothing moves when the script comes */
  readonly early: string
  readonly earlyHash: string
  readonly style: string
  readonly styleHash: string
  /** what the page's script unpacks again */
  readonly pack: (text: string) => string
}

/** says that there are scripts: controls have their room from the start */
const EARLY = "document.documentElement.classList.add('script')"

/** by whether a page has charts of one's own */
const bundled = new Map<boolean, Promise<string>>()

/**
 * Bundles the page's script (once for as long as the program runs) and puts the style sheet together.
 *
 * @param ownCharts  the page has charts of one's own: its script carries what draws them
 */
export async function pageAssets(ownCharts: boolean): Promise<PageAssets> {
  const found = bundled.get(ownCharts) ?? bundle(ownCharts ? 'ownCharts' : 'main')
  bundled.set(ownCharts, found)
  const [script, { pageStyle }] = await Promise.all([found, import('./page/style.ts')])
  const style = pageStyle()
  return { script, scriptHash: hash(script), early: EARLY, earlyHash: hash(EARLY), style, styleHash: hash(style), pack }
}

async function bundle(entry: 'main' | 'ownCharts'): Promise<string> {
  const { build } = await import('esbuild')
  const fromSource = import.meta.url.endsWith('.ts')
  const main = `./browser/${entry}.${fromSource ? 'ts' : 'js'}` // not rewritten by the compiler
  const result = await build({
    entryPoints: [fileURLToPath(new URL(main, import.meta.url))],
    bundle: true,
    write: false,
    minify: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    ...(fromSource ? { conditions: ['loopwright-source'] } : {}),
    legalComments: 'none',
    charset: 'utf8',
    logLevel: 'silent',
  })
  return result.outputFiles[0]!.text.replaceAll('</script', '<\\/script')
}

function hash(text: string): string {
  return `sha256-${createHash('sha256').update(text).digest('base64')}`
}

function pack(text: string): string {
  return deflateRawSync(text, { level: 9 }).toString('base64')
}
