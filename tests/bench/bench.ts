/**
 * Benchmarks: `npm run bench [-- --json] [-- --rounds 5] [-- --only small,demo]`, from the top folder.
 * Each part of a case runs in a fresh process, in an order shuffled anew each round; the median is told with the spread and the ratio to a calibrating loop.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { cpus, loadavg, tmpdir, totalmem } from 'node:os'
import { join } from 'node:path'
import { buildSync } from 'esbuild'
import seedrandom from 'seedrandom'
import { CASES, type Figures } from './cases.ts'

interface Sample {
  /** nanoseconds a turn of the calibrating loop, in the same process */
  readonly calibration: number
  readonly figures: Figures
}

function option(name: string): string | undefined {
  const at = process.argv.indexOf(`--${name}`)
  return at < 0 ? undefined : process.argv[at + 1]
}

/** One file of all that a case needs, so that its process loads no compiler of types, which would count as its memory. */
function bundle(folder: string): string {
  const file = join(folder, 'case.mjs')
  buildSync({
    entryPoints: [new URL('./case.ts', import.meta.url).pathname],
    outfile: file,
    bundle: true,
    platform: 'node',
    format: 'esm',
    conditions: ['loopwright-source'],
    banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url)" },
    logLevel: 'error',
  })
  return file
}

function sample(file: string, job: string): Sample {
  const done = spawnSync(process.execPath, [file, job], { encoding: 'utf8' })
  if (done.status !== 0) throw new Error(`${job} failed:\n${done.stderr}`)
  return JSON.parse(done.stdout.trim().split('\n').at(-1)!) as Sample
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2
}

/** Turns of the calibrating loop in the time that the figure tells; null where it tells no time. */
function calibratingTurns(figure: string, value: number, calibration: number): number | null {
  if (figure === 'replicationsPerSecond') return 1e9 / value / calibration
  if (figure === 'simulatedHoursPerSecond') return 1e9 / value / calibration
  if (figure.startsWith('nanoseconds')) return value / calibration
  return figure === 'seconds' ? (value * 1e9) / calibration : null
}

function summary(samples: readonly Sample[]) {
  const calibrationNanoseconds = median(samples.map((one) => one.calibration))
  const figures = Object.keys(samples[0]!.figures).map((figure) => {
    const values = samples.map((one) => one.figures[figure]!)
    const turns = samples.map((one) => calibratingTurns(figure, one.figures[figure]!, one.calibration))
    const told = { median: median(values), min: Math.min(...values), max: Math.max(...values) }
    return [figure, { ...told, calibratingTurns: turns.includes(null) ? null : median(turns.map((one) => one!)) }] as const
  })
  return { calibrationNanoseconds, figures: Object.fromEntries(figures) }
}

const rounds = Number(option('rounds') ?? 5)
const names = option('only')?.split(',') ?? Object.keys(CASES)
const unknown = names.filter((name) => CASES[name] === undefined)
if (unknown.length > 0) throw new Error(`no case is called ${unknown.join(', ')}; there are ${Object.keys(CASES).join(', ')}`)
const jobs = names.flatMap((name) => Object.keys(CASES[name]!.parts).map((part) => `${name}/${part}`))
const samples = new Map<string, Sample[]>(jobs.map((job) => [job, []]))
const folder = mkdtempSync(join(tmpdir(), 'loopwright-bench-'))
try {
  const file = bundle(folder)
  const random = seedrandom.alea('order of the benchmarks')
  for (let round = 0; round < rounds; round++) {
    const order = jobs.map((job) => [random(), job] as const).sort(([a], [b]) => a - b)
    for (const [, job] of order) {
      process.stderr.write(`round ${round + 1}/${rounds}  ${job}\n`)
      samples.get(job)!.push(sample(file, job))
    }
  }
} finally {
  rmSync(folder, { recursive: true })
}

const machine = {
  processor: cpus()[0]?.model ?? 'unknown',
  cores: cpus().length,
  memoryGigabytes: totalmem() / 2 ** 30,
  load: loadavg()[0],
}
const versions = { node: process.version, v8: process.versions.v8, system: `${process.platform} ${process.arch}` }
const cases = names.map((name) => {
  const { about, parts } = CASES[name]!
  return {
    name,
    about,
    rounds,
    parts: Object.fromEntries(Object.keys(parts).map((part) => [part, summary(samples.get(`${name}/${part}`)!)])),
  }
})

if (process.argv.includes('--json')) console.log(JSON.stringify({ machine, versions, cases }, null, 2))
else {
  const { processor, cores, load } = machine
  console.log(`${processor}, ${cores} cores, Node ${versions.node}, load ${load?.toFixed(1)}; medians of ${rounds} fresh processes`)
  for (const { name, about, parts } of cases) {
    console.log(`\n${name}: ${about}`)
    for (const [part, { calibrationNanoseconds, figures }] of Object.entries(parts)) {
      console.log(`  ${part} (calibrating loop ${calibrationNanoseconds.toFixed(2)} ns a turn)`)
      for (const [figure, told] of Object.entries(figures)) {
        const turns = told.calibratingTurns === null ? '' : `   ${told.calibratingTurns.toPrecision(4)} turns of the calibrating loop each`
        const spread = `(${told.min.toPrecision(4)} … ${told.max.toPrecision(4)})`
        console.log(`    ${figure.padEnd(24)} ${told.median.toPrecision(4).padStart(10)}   ${spread}${turns}`)
      }
    }
  }
}
