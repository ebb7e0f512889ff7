/**
 * The command in few files instead of five hundred: most of its start would be spent on finding and opening them. `npm run build` makes them for good, and a
 * clone makes them anew, in node_modules/.cache, whenever a source file has changed.
 */
import { spawnSync } from 'node:child_process'
import { createHash, randomBytes } from 'node:crypto'
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'

const PACKAGES = fileURLToPath(new URL('../..', import.meta.url))
const CACHE = join(PACKAGES, '../node_modules/.cache/loopwright')
const NAMES = ['kernel', 'stats', 'line', 'scenario', 'measure', 'study', 'decide', 'charts', 'notebook']
/** each package by the ways in that its package.json names: `stats`, `stats/fit`, … */
const doorsOf = (name) =>
  Object.entries(JSON.parse(readFileSync(join(PACKAGES, name, 'package.json'), 'utf8')).exports).map(
    ([door, { 'loopwright-source': file }]) => [join(name, door), join(PACKAGES, name, file)],
  )
/** packages whose code decides what a run gives */
const ENGINE = ['kernel', 'stats', 'line', 'study']
/** made to be loaded from where they lie: native, or bundled again for the page */
const OUTSIDE = [
  'bullmq',
  'ioredis',
  '@resvg/resvg-js',
  'dejavu-fonts-ttf',
  'dejavu-fonts-ttf/*',
  'esbuild',
  'pptxgenjs',
  'tsx',
  'tsx/*',
  'vega',
  'vega-embed',
  'vega-interpreter',
  'vega-lite',
]
/** files that a process or a thread starts with: the command, a thread, a job in a process by itself */
const STARTED = ['cli', 'worker', 'aloneProcess']
/** a letter as texts and patterns may spell it too, so that the file is ASCII, which is read at once; one behind a backslash stays */
const LETTERS = /(?<!\\)[^\0-\x7f]/g
const escaped = (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`
/** a bundle that nobody has started for so long goes; milliseconds */
const KEPT = 24 * 3600 * 1000

/** zod brings its sentences in fifty languages; ours are in `messages.ts` */
const oneLanguage = {
  name: 'one language',
  setup: ({ onLoad }) => onLoad({ filter: /zod.v4.locales.index\.js$/ }, () => ({ contents: '' })),
}

/**
 * Writes the bundle: `cli.js` and what it starts, `worker.js` for the threads, and one file for each package, or way into it, as notebooks import it.
 *
 * @param {string} folder  made where it is missing
 */
export async function bundle(folder) {
  const { build } = await import('esbuild')
  const source = (path) => join(PACKAGES, path)
  const common = {
    outdir: folder,
    bundle: true,
    conditions: ['loopwright-source'],
    external: OUTSIDE,
    legalComments: 'none',
    logLevel: 'silent',
  }
  const forNode = { ...common, platform: 'node', target: 'node20', plugins: [oneLanguage] }
  const define = { ENGINE_CODE: JSON.stringify(digest(ENGINE, (file) => readFileSync(file))) }
  const started = build({
    ...forNode,
    entryPoints: {
      'cli.main': source('cli/src/cli.ts'),
      'worker.main': source('study/src/runs/worker.ts'),
      'aloneProcess.main': source('study/src/queue/aloneProcess.ts'),
    },
    format: 'cjs',
    outExtension: { '.js': '.cjs' },
    define: { ...define, 'import.meta.url': 'addressOfBundle', 'import.meta.resolve': 'undefined' },
    banner: {
      js: "const addressOfBundle = require('node:url').pathToFileURL(__filename).href; const { importOf } = require('./start.cjs')",
    },
  })
  const imported = build({
    ...forNode,
    entryPoints: Object.fromEntries(NAMES.flatMap(doorsOf)),
    format: 'esm',
    splitting: true,
    define,
    // packages of the older kind call `require`
    banner: { js: "import { createRequire as requireOf } from 'node:module'\nconst require = requireOf(import.meta.url)" },
  })
  const page = build({
    ...common,
    entryPoints: Object.fromEntries(
      ['main', 'ownCharts', 'watch', 'live/worker'].map((name) => [`browser/${name}`, source(`notebook/src/browser/${name}.ts`)]),
    ),
    format: 'esm',
    platform: 'browser',
    plugins: [oneLanguage],
  })
  await Promise.all([started, imported, page])
  for (const name of STARTED) {
    const file = join(folder, `${name}.main.cjs`)
    const text = readFileSync(file, 'utf8').replaceAll(/(?<![\w$.])import\(/g, 'importOf(') // see start.cjs
    writeFileSync(file, text.replaceAll(LETTERS, escaped))
  }
  copyFileSync(new URL('./start.cjs', import.meta.url), join(folder, 'start.cjs'))
  for (const name of STARTED) {
    const lines = [
      "import { fileURLToPath } from 'node:url'",
      "import { start } from './start.cjs'",
      `start(fileURLToPath(new URL('./${name}.main.cjs', import.meta.url)))`,
    ]
    writeFileSync(join(folder, `${name}.js`), `${lines.join('\n')}\n`)
  }
}

/**
 * The bundle of this clone as its source stands now.
 *
 * @returns {Promise<string | null>} address of its `cli.js`; null where none can be made
 */
export async function bundleOfClone() {
  const folder = join(CACHE, key())
  const main = join(folder, 'cli.js')
  if (!existsSync(main)) {
    const part = join(CACHE, `.${randomBytes(6).toString('hex')}.part`)
    try {
      mkdirSync(part, { recursive: true })
      await bundle(part)
      renameSync(part, folder)
      warm(main)
      removeOld()
    } catch {
      rmSync(part, { recursive: true, force: true })
      if (!existsSync(main)) return null // another process may have been quicker
    }
  }
  return pathToFileURL(main).href
}

/** The first run of a bundle puts down what it compiled, and no later one does: a run that uses most of it. */
function warm(main) {
  const scenario = join(PACKAGES, '../scenarios/outdoor-unit-base-line.yaml')
  spawnSync(process.execPath, [main, 'sweep', scenario, '--carriers', '9..10', '--replications', '30', '--fresh'])
}

/** What the bundle is made of: each source file and each package.json by name, size and time of its last change. */
function key() {
  const lock = join(PACKAGES, '../node_modules/.package-lock.json')
  const others = [
    fileURLToPath(import.meta.url),
    fileURLToPath(new URL('./start.cjs', import.meta.url)),
    ...[...NAMES, 'cli'].map((name) => join(PACKAGES, name, 'package.json')),
    ...(existsSync(lock) ? [lock] : []),
  ]
  return digest([...NAMES, 'cli'], stamp, others)
}

function stamp(file) {
  const { size, mtimeMs } = statSync(file)
  return `${size} ${mtimeMs}`
}

/** Of the source files of packages, tests left out, in the order of names. */
function digest(names, of, others = []) {
  const hash = createHash('sha256')
  const files = names.flatMap((name) => filesIn(join(PACKAGES, name, 'src')).sort())
  for (const file of [...files, ...others]) hash.update(`${file.slice(PACKAGES.length).replaceAll('\\', '/')}\n`).update(of(file))
  return hash.digest('hex').slice(0, 16)
}

/** All source files below a folder, by a walk of our own: what Node has for it takes eight times as long, which each start of a clone would pay. */
function filesIn(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name)
    if (entry.isDirectory()) return filesIn(path)
    return path.endsWith('.ts') && !path.endsWith('.test.ts') ? [path] : []
  })
}

function removeOld() {
  for (const name of readdirSync(CACHE)) {
    const folder = join(CACHE, name)
    if (Date.now() - statSync(folder).mtimeMs > KEPT) rmSync(folder, { recursive: true, force: true })
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const dist = join(dirname(fileURLToPath(import.meta.url)), '../dist')
  for (const name of existsSync(dist) ? readdirSync(dist) : [])
    if (/\.(js|cjs|cache)$|^compiled$/.test(name)) rmSync(join(dist, name), { recursive: true })
  await bundle(dist)
  warm(join(dist, 'cli.js'))
}
