/** What every page carries along: its script and its style, and the hashes by which the browser knows them. Beside `browser`, as its bundle is. */
import { createHash } from 'node:crypto'
import { fileURLToPath } from 'node:url'
import { deflateRawSync } from 'node:zlib'
import type { Plugin } from 'esbuild'

export interface PageAssets {
  readonly script: string
  readonly scriptHash: string
  /** stands before the body, so that nothing moves when the script comes */
  readonly early: string
  readonly earlyHash: string
  readonly style: string
  readonly styleHash: string
  /** what the page's worker runs: the engine and the reader of scenarios, packed; null: the page simulates nothing */
  readonly engine: string | null
  /** of a style or a script that is this page's own */
  readonly hash: (text: string) => string
  /** what the page's script unpacks again */
  readonly pack: (text: string) => string
}

/** says that there are scripts, and workers: controls have their room from the start */
const EARLY =
  "document.documentElement.classList.add('script');if(typeof Worker==='function'&&typeof DecompressionStream==='function')document.documentElement.classList.add('working')"

type Entry = 'main' | 'ownCharts' | 'live/worker' | 'watch'

/** by what the browser begins with */
const bundled = new Map<Entry, Promise<string>>()

/**
 * Bundles the page's script (once for as long as the program runs) and puts the style sheet together.
 *
 * @param ownCharts  the page has charts of one's own: its script carries what draws them
 * @param live       its reader may change the line: the engine travels along
 */
export async function pageAssets(ownCharts: boolean, live = false): Promise<PageAssets> {
  const [script, engine, { pageStyle }] = await Promise.all([
    once(ownCharts ? 'ownCharts' : 'main'),
    live ? packedEngine() : null,
    import('./page/style.ts'),
  ])
  const style = pageStyle()
  return {
    script,
    scriptHash: hash(script),
    early: EARLY,
    earlyHash: hash(EARLY),
    style,
    styleHash: hash(style),
    engine,
    hash,
    pack,
  }
}

let engine: Promise<string> | null = null

/** Packed once for as long as the program runs. */
function packedEngine(): Promise<string> {
  engine ??= once('live/worker').then(pack)
  return engine
}

function once(entry: Entry): Promise<string> {
  const found = bundled.get(entry) ?? bundle(entry)
  bundled.set(entry, found)
  return found
}

/** zod brings its sentences in fifty languages; ours are in `messages.ts` of the scenario */
const ONE_LANGUAGE: Plugin = {
  name: 'one language',
  setup: ({ onLoad }) => onLoad({ filter: /zod.v4.locales.index\.js$/ }, () => ({ contents: '' })),
}

/** The script of the window around a page that is being written. */
export const browserScript = async (entry: 'watch'): Promise<string> => await once(entry)

async function bundle(entry: Entry): Promise<string> {
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
    plugins: [ONE_LANGUAGE],
  })
  return result.outputFiles[0]!.text.replaceAll('</script', '<\\/script')
}

function hash(text: string): string {
  return `sha256-${createHash('sha256').update(text).digest('base64')}`
}

let packed: { readonly text: string; readonly base64: string } | null = null

/** A page that is written again and again mostly packs what it packed before. */
function pack(text: string): string {
  if (packed?.text !== text) packed = { text, base64: deflateRawSync(text, { level: 9 }).toString('base64') }
  return packed.base64
}
