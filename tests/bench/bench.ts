/**
 * Benchmarks: `npm run bench [-- --json] [-- --rounds 5] [-- --only small,demo]`.
 * Each case runs in a fresh process, the order is turned round from round to round, and the median is told with the spread and the ratio to a calibrating loop.
 */
import { spawnSync } from 'node:child_process'
import { cpus, loadavg } from 'node:os'
import { CASES } from './cases.ts'

interface Sample {
  readonly calibration: number
  readonly figures: Record<string, number>
}

function option(name: string): string | undefined {
  const at = process.argv.indexOf(`--${name}`)
  return at < 0 ? undefined : process.argv[at + 1]
}

function sample(name: string): Sample {
  const file = new URL('./case.ts', import.meta.url).pathname
  const done = spawnSync(process.execPath, ['--conditions=loopwright-source', '--import', 'tsx', file, name], { encoding: 'utf8' })
  if (done.status !== 0) throw new Error(`case ${name} failed:\n${done.stderr}`)
  return JSON.parse(done.stdout.trim().split('\n').at(-1)!) as Sample
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2
}

const rounds = Number(option('rounds') ?? 5)
const names = option('only')?.split(',') ?? Object.keys(CASES)
const samples = new Map<string, Sample[]>(names.map((name) => [name, []]))
for (let round = 0; round < rounds; round++) {
  for (const name of round % 2 === 0 ? names : [...names].reverse()) {
    process.stderr.write(`round ${round + 1}/${rounds}  ${name}\n`)
    samples.get(name)!.push(sample(name))
  }
}

const machine = { processor: cpus()[0]?.model ?? 'unknown', cores: cpus().length, node: process.version, load: loadavg()[0] }
const results = names.map((name) => {
  const list = samples.get(name)!
  const calibration = median(list.map((one) => one.calibration))
  const figures = Object.fromEntries(
    Object.keys(list[0]!.figures).map((figure) => {
      const values = list.map((one) => one.figures[figure]!)
      const middle = median(values)
      const perCalibration = figure.startsWith('nanoseconds') ? middle / calibration : null
      return [figure, { median: middle, min: Math.min(...values), max: Math.max(...values), perCalibration }]
    }),
  )
  return { name, about: CASES[name]!.about, rounds, calibrationNanoseconds: calibration, figures }
})

if (process.argv.includes('--json')) console.log(JSON.stringify({ machine, cases: results }, null, 2))
else {
  console.log(
    `${machine.processor}, ${machine.cores} cores, Node ${machine.node}, load ${machine.load?.toFixed(1)}; medians of ${rounds} fresh processes`,
  )
  for (const { name, about, calibrationNanoseconds, figures } of results) {
    console.log(`\n${name}: ${about} (calibrating loop ${calibrationNanoseconds.toFixed(2)} ns a turn)`)
    for (const [figure, { median: middle, min, max, perCalibration }] of Object.entries(figures)) {
      const ratio = perCalibration === null ? '' : `   ${perCalibration.toFixed(1)} × the calibrating loop`
      console.log(`  ${figure.padEnd(26)} ${middle.toPrecision(4).padStart(10)}   (${min.toPrecision(4)} … ${max.toPrecision(4)})${ratio}`)
    }
  }
}
