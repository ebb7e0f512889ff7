/**
 * Benchmarks: `npm run bench [-- --json] [-- --rounds 5] [-- --only small,demo] [-- --share 0.01]`, from the top folder; `-- --growth` draws how cost grows,
 * `-- --native` times both engines beside C++, where there is a compiler for it.
 * Each part of a case runs in a fresh process, in an order shuffled anew each round; the median is told with the spread and the ratio to a calibrating loop.
 * `--share` does that part of the work only: for trying out, the figures are worth little then.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { buildSync } from 'esbuild'
import seedrandom from 'seedrandom'
import { CASES } from './cases.ts'
import { typedOption } from '../helpers/typedOption.ts'
import { benchDocument, benchText, type Sample } from './document.ts'
import { GROWTH } from './growth.ts'
import { NATIVE, NATIVE_FLAGS } from './native/cases.ts'
import { compileNative, findCompiler } from './native/native.ts'

/**
 * One file of all that a case needs, of the kind that the command itself is made into: code in a function, which runs a sixth faster than code of a module. Its process
 * loads no compiler of types, which would count as its memory.
 */
function bundle(folder: string): string {
  const file = join(folder, 'case.cjs')
  buildSync({
    entryPoints: [fileURLToPath(new URL('./case.ts', import.meta.url))],
    outfile: file,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    conditions: ['loopwright-source'],
    logLevel: 'error',
  })
  return file
}

/** The programs that engines are timed beside, each under its name in the folder. */
function compileAll(folder: string): void {
  const compiler = findCompiler()
  if (compiler === null) throw new Error('--native needs a C++ compiler: none answers by the name in CXX, nor as g++, clang++ or c++')
  for (const [name, flags] of Object.entries(NATIVE_FLAGS)) {
    process.stderr.write(`${compiler.version}: ${flags.join(' ')}\n`)
    compileNative(compiler.command, folder, name, flags)
  }
}

function sample(file: string, job: string, share: string): Sample {
  const done = spawnSync(process.execPath, [file, job, share], { encoding: 'utf8' })
  if (done.status !== 0) throw new Error(`${job} failed:\n${done.stderr}`)
  return JSON.parse(done.stdout.trim().split('\n').at(-1)!) as Sample
}

const growth = process.argv.includes('--growth')
const rounds = Number(typedOption('rounds') ?? 5)
const native = process.argv.includes('--native')
const all = growth ? GROWTH : native ? NATIVE : CASES
const names = typedOption('only')?.split(',') ?? Object.keys(all)
const unknown = names.filter((name) => all[name] === undefined)
if (unknown.length > 0) throw new Error(`no case is called ${unknown.join(', ')}; there are ${Object.keys(all).join(', ')}`)
const cases = Object.fromEntries(names.map((name) => [name, all[name]!]))
const jobs = Object.entries(cases).flatMap(([name, { parts }]) => Object.keys(parts).map((part) => `${name}/${part}`))
const samples = new Map<string, Sample[]>(jobs.map((job) => [job, []]))
const folder = mkdtempSync(join(tmpdir(), 'loopwright-bench-'))
try {
  const file = bundle(folder)
  if (native) compileAll(folder)
  const random = seedrandom.alea('order of the benchmarks')
  for (let round = 0; round < rounds; round++) {
    const order = jobs.map((job) => [random(), job] as const).sort(([a], [b]) => a - b)
    for (const [, job] of order) {
      process.stderr.write(`round ${round + 1}/${rounds}  ${job}\n`)
      samples.get(job)!.push(sample(file, job, typedOption('share') ?? '1'))
    }
  }
} finally {
  rmSync(folder, { recursive: true })
}

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }
const told = benchDocument(cases, samples, { rounds, version })
console.log(process.argv.includes('--json') ? JSON.stringify(told, null, 2) : benchText(told))
if (growth && typedOption('only') === undefined) {
  // the page brings all that draws, which nothing else here asks for
  const { writeGrowth } = await import('./growthPage.ts')
  process.stderr.write(`\n${await writeGrowth(told, 'out', new Date())}\n`)
}
