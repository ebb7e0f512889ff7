/** The packages as they would be published, installed into a folder that knows nothing of this project. */
import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { TOP } from '../tidy/sources.ts'

export const PACKAGES = readdirSync(join(TOP, 'packages')).filter((name) => existsSync(join(TOP, 'packages', name, 'package.json')))

export interface Ran {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

export function run(program: string, words: readonly string[], folder: string): Ran {
  const { status, stdout, stderr } = spawnSync(program, words, {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
    env: { ...process.env, NO_COLOR: '1' },
  })
  return { code: status, out: stdout, err: stderr }
}

/** What has to go well for anything else to make sense. */
function must(program: string, words: readonly string[], folder: string): string {
  const { code, out, err } = run(program, words, folder)
  if (code !== 0) throw new Error(`${program} ${words.join(' ')} ended by ${code}:\n${out}\n${err}`)
  return out
}

/** The newest of each line of Node that the packages are for when this was written; the registry has each as a package of its own for a system. */
const NODES: Readonly<Record<number, string>> = { 20: '20.19.5', 22: '22.23.5', 24: '24.22.3' }

export const NODE_LINES = Object.keys(NODES).map(Number)

/**
 * A Node of a line: the one that runs, one that the environment names (`LOOPWRIGHT_NODES`, paths parted by blanks), or one installed once beside the caches of
 * this project.
 *
 * @returns  its path, or why there is none
 */
export function nodeOf(line: number): { readonly path: string } | { readonly why: string } {
  const isOfLine = (path: string): boolean => run(path, ['--version'], TOP).out.startsWith(`v${line}.`)
  const named = (process.env.LOOPWRIGHT_NODES ?? '').split(' ').filter((path) => path !== '')
  const found = [process.execPath, ...named].find(isOfLine)
  if (found !== undefined) return { path: found }
  const name = `node-${process.platform}-${process.arch}`
  const folder = join(TOP, 'node_modules/.cache/nodes', String(line))
  const path = join(folder, 'package/bin/node')
  if (!existsSync(path)) {
    mkdirSync(folder, { recursive: true })
    // the one file of it that runs, and none of the three thousand beside it
    const packed = run('npm', ['pack', '--ignore-scripts', '--loglevel', 'error', `${name}@${NODES[line]!}`], folder)
    if (packed.code !== 0) return { why: `${name} cannot be had: ${packed.err.split('\n')[0]}` }
    const archive = packed.out.trim()
    const { code, err } = run('tar', ['-xzf', archive, 'package/bin/node'], folder)
    rmSync(join(folder, archive), { force: true })
    if (code !== 0) return { why: `${name} cannot be taken out of ${archive}: ${err.split('\n')[0]}` }
  }
  return isOfLine(path) ? { path } : { why: `${path} does not run here` }
}

/** Of each package the ways in that its package.json names, as they are imported: `@loopwright/stats/fit`. */
export function doorsOf(name: string): string[] {
  const { exports } = JSON.parse(readFileSync(join(TOP, 'packages', name, 'package.json'), 'utf8')) as { exports: Record<string, unknown> }
  return Object.keys(exports).map((door) => `@loopwright/${name}${door.slice(1)}`)
}

/**
 * Builds a copy of the packages, so that nothing is left in the clone, packs it and installs it.
 *
 * @param top  an empty folder
 * @returns    the folder in which the packages are installed; its name has blanks and umlauts
 */
export function installed(top: string): string {
  const copy = join(top, 'copy')
  mkdirSync(join(copy, 'node_modules/@loopwright'), { recursive: true })
  cpSync(join(TOP, 'packages'), join(copy, 'packages'), {
    recursive: true,
    filter: (path) => !/(^|[\\/])(dist|node_modules)$/.test(path.slice(TOP.length)),
  })
  for (const file of ['package.json', 'tsconfig.json']) cpSync(join(TOP, file), join(copy, file))
  for (const name of readdirSync(join(TOP, 'node_modules')))
    if (name !== '@loopwright' && !name.startsWith('.')) symlinkSync(join(TOP, 'node_modules', name), join(copy, 'node_modules', name))
  for (const name of PACKAGES) symlinkSync(join(copy, 'packages', name), join(copy, 'node_modules/@loopwright', name))
  // one thread: several look at the same types each for itself
  must(
    process.execPath,
    [join(TOP, 'node_modules/@typescript/native/bin/tsc'), '-b', '--singleThreaded', 'packages/tsconfig.build.json'],
    copy,
  )
  must(process.execPath, ['packages/cli/bin/bundle.js'], copy)

  const packed = join(top, 'packed')
  mkdirSync(packed)
  must('npm', ['pack', '--workspaces', '--ignore-scripts', '--pack-destination', packed], copy)

  const empty = join(top, 'leerer Ordner für Späße')
  mkdirSync(empty)
  writeFileSync(join(empty, 'package.json'), JSON.stringify({ name: 'empty', private: true, type: 'module' }))
  const files = readdirSync(packed).map((file) => join(packed, file))
  must('npm', ['install', '--ignore-scripts', '--no-audit', '--no-fund', '--prefer-offline', ...files], empty)
  return empty
}
