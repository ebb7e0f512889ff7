/** A notebook's file to its module: TypeScript from any folder, whatever kind of package it lies in, with the places of its own text kept. */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { SourceMap } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join, relative, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { BuildFailure, BuildOptions, Message, Plugin } from 'esbuild'
import { type Fault, NotebookFaults } from './fault.ts'
import { type StepMark, withSteps } from './steps.ts'

/** What the runner needs to know of the packages that run. */
export interface LoadOptions {
  /** address of what `@loopwright/NAME` is here; null: as Node finds it */
  readonly ours: (name: string) => string | null
  /** imports a file that was made, with source maps in use: places in what is thrown are then those of the notebook's own text */
  readonly importFile: (address: string) => Promise<unknown>
}

/** A notebook, loaded. */
export interface LoadedNotebook {
  /** the module's exports */
  readonly exports: unknown
  /** the files of which it was made: itself, and what it imports; whole paths */
  readonly files: readonly string[]
  /** of its body, in their order; empty where it could not be split */
  readonly steps: readonly StepMark[]
}

/** texts of all files that notebooks were made of, as they were then, by whole path */
const texts = new Map<string, string>()

/**
 * Loads a notebook. What it imports is found from its own folder; `@loopwright/…` is what runs.
 *
 * @param path  of a TypeScript or JavaScript module
 * @throws NotebookFaults  if it is no program, or what it imports is not there; whatever carrying out the module throws
 */
export async function loadNotebook(path: string, { ours, importFile }: LoadOptions): Promise<LoadedNotebook> {
  const entry = resolve(path)
  const made = await built(entry, ours)
  const folder = await mkdtemp(join(tmpdir(), 'loopwright-'))
  const file = join(folder, 'notebook.mjs')
  try {
    await writeFile(file, made.code)
    return { exports: await importFile(pathToFileURL(file).href), files: made.files, steps: made.steps }
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** A place in one of the files of a notebook. */
export interface SourcePlace {
  /** as it shall be shown: from the working folder */
  readonly file: string
  readonly line: number
  readonly column: number
  readonly source: string
}

/**
 * Where in the files of a notebook something was thrown; null: elsewhere.
 *
 * @example placeOf(new Error('elsewhere')) // => null
 */
export function placeOf(error: unknown): SourcePlace | null {
  const frames = error instanceof Error ? (error.stack ?? '').split('\n').filter((each) => /^\s*at /.test(each)) : []
  for (const frame of frames) {
    for (const [path, text] of texts) {
      const name = [path, pathToFileURL(path).href].find((each) => frame.includes(`${each}:`))
      const [, line, column] = name === undefined ? [] : (/^:(\d+):(\d+)/.exec(frame.slice(frame.indexOf(`${name}:`) + name.length)) ?? [])
      if (line === undefined) continue
      return { file: shown(path), line: Number(line), column: Number(column), source: text.split(/\r?\n/)[Number(line) - 1] ?? '' }
    }
  }
  return null
}

/**
 * A line of a file of a notebook, as it was when it was loaded; '': not known.
 *
 * @param line  from 1
 * @example lineOf('nowhere.ts', 1) // => ''
 */
export const lineOf = (path: string, line: number): string => texts.get(resolve(path))?.split(/\r?\n/)[line - 1] ?? ''

async function built(entry: string, ours: LoadOptions['ours']): Promise<Omit<LoadedNotebook, 'exports'> & { readonly code: string }> {
  const { build } = await import('esbuild')
  const files = new Set([entry])
  const steps: StepMark[] = []
  const options = {
    entryPoints: [entry],
    outfile: join(dirname(entry), 'notebook.mjs'),
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    sourcemap: 'inline',
    sourcesContent: false,
    // sources by their whole paths: what is made lies elsewhere
    sourceRoot: '',
    tsconfigRaw: '{}',
    logLevel: 'silent',
    plugins: [resolving(ours), reading(entry, files, steps)],
  } satisfies BuildOptions
  try {
    const { outputFiles } = await build(options)
    return { code: withWholePaths(outputFiles[0].text, dirname(entry)), files: [...files], steps }
  } catch (error) {
    const errors = (error as Partial<BuildFailure>).errors
    if (errors === undefined) throw error
    throw new NotebookFaults(errors.map((each) => faultOf(each, entry)))
  }
}

/** Names in the map are from the folder of the notebook; they become addresses. */
function withWholePaths(code: string, folder: string): string {
  return code.replace(/(\/\/# sourceMappingURL=data:application\/json;base64,)(\S+)\s*$/, (_, head: string, packed: string) => {
    const map = JSON.parse(Buffer.from(packed, 'base64').toString('utf8')) as { sources: string[] }
    const whole = { ...map, sources: map.sources.map((each) => pathToFileURL(resolve(folder, each)).href) }
    return `${head}${Buffer.from(JSON.stringify(whole)).toString('base64')}\n`
  })
}

/** Files of the user go in; packages are imported from where they lie. */
const resolving = (ours: LoadOptions['ours']): Plugin => ({
  name: 'packages',
  setup: (build) => {
    build.onResolve({ filter: /^[^./]/ }, async ({ path, kind, resolveDir, pluginData }) => {
      if (pluginData === 'found' || kind === 'entry-point' || path.startsWith('node:')) return undefined
      if (path.startsWith('@loopwright/')) {
        const address = ours(path.slice('@loopwright/'.length))
        return address === null ? { path, external: true } : { path: address, external: true }
      }
      const found = await build.resolve(path, { kind, resolveDir, pluginData: 'found' })
      if (found.errors.length > 0 || found.external) return found
      return { path: pathToFileURL(found.path).href, external: true }
    })
  },
})

/** Keeps the texts, splits the notebook itself into its steps, and lets each file know its own address. */
const reading = (entry: string, files: Set<string>, steps: StepMark[]): Plugin => ({
  name: 'texts',
  setup: ({ onLoad, esbuild }) => {
    onLoad({ filter: /\.[cm]?[jt]s$/, namespace: 'file' }, async ({ path }) => {
      const written = await readFile(path, 'utf8')
      files.add(path)
      texts.set(path, written)
      const loader = /\.[cm]?ts$/.test(path) ? 'ts' : 'js'
      const text = written.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href))
      if (path !== entry) return { contents: text, loader }
      const plain = await esbuild
        .transform(text, { loader, sourcefile: path, sourcemap: 'external', sourcesContent: false, target: 'node20', tsconfigRaw: '{}' })
        // told by the build, with all others
        .catch(() => null)
      if (plain === null) return { contents: text, loader }
      const map = JSON.parse(plain.map) as { mappings: string; sources: string[] }
      const places = new SourceMap(map as never)
      const stepped = withSteps(plain.code, ({ line, column }) => {
        const found = places.findEntry(line - 1, column) as { originalLine?: number; originalColumn?: number }
        return { line: (found.originalLine ?? line - 1) + 1, column: found.originalColumn ?? column }
      })
      if (stepped === null) return { contents: text, loader }
      steps.push(...stepped.marks)
      const lines = map.mappings.split(';')
      for (const at of stepped.putIn) lines.splice(at, 0, '')
      const own = Buffer.from(JSON.stringify({ ...map, mappings: lines.join(';') })).toString('base64')
      return { contents: `${stepped.code}\n//# sourceMappingURL=data:application/json;base64,${own}`, loader: 'js' }
    })
  },
})

function faultOf({ text, location }: Message, entry: string): Fault {
  if (location === null) return { file: shown(entry), line: 1, column: 1, length: 1, source: '', message: text, fix: '' }
  const { file, line, column, length, lineText } = location
  // esbuild counts bytes
  const before = Buffer.from(lineText).subarray(0, column).toString('utf8').length
  return { file: shown(resolve(file)), line, column: before + 1, length: Math.max(1, length), source: lineText, message: text, fix: '' }
}

/** The text of a file of a notebook, as it was when it was loaded; '': not known. */
export const textOf = (path: string): string => texts.get(resolve(path)) ?? ''

const shown = (path: string): string => {
  const way = relative(resolve('.'), path)
  return way.startsWith('..') ? path : way
}
