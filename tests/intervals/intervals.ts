/**
 * How often 95 % intervals of mean output hold, and how much narrower they are with the luck of the worlds taken out: `npm run intervals [-- --studies 2000] [-- --seed 1]`. Each
 * study has 100 runs with a seed text of its own, and is told after 30, 50 and all of them. Two thousand of each of the lines take three quarters of an hour on two cores.
 */
import { spawn } from 'node:child_process'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { typedOption } from '../helpers/typedOption.ts'
import { type Coverage, coverageOf, type ToldMean } from './coverage.ts'
import { LINES } from './lines.ts'

function option(name: string, otherwise: number): number {
  const value = process.argv.includes(`--${name}`) ? Number(typedOption(name)) : otherwise
  if (!Number.isInteger(value) || value < 1) throw new Error(`--${name} needs a whole number from 1`)
  return value
}

interface Found {
  readonly means: readonly ToldMean[]
  readonly mean: number
}

const SHARE = fileURLToPath(new URL('./share.ts', import.meta.url))

async function share(name: string, studies: number, seed: string): Promise<Found> {
  const child = spawn(process.execPath, ['--import', 'tsx', '-C', 'loopwright-source', SHARE, name, String(studies), seed], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const parts: Buffer[] = []
  child.stdout.on('data', (part: Buffer) => parts.push(part))
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve))
  if (code !== 0) throw new Error(`the studies of ${name} ended with ${code}`)
  return JSON.parse(Buffer.concat(parts).toString()) as Found
}

const perCent = (part: number): string => `${(100 * part).toFixed(1)} %`
const WIDTHS = [38, 6, 9, 9, 9, 8, 8]
const line = (cells: readonly string[]): string =>
  `${cells.map((cell, k) => (k === 0 ? cell.padEnd(WIDTHS[k]!) : cell.padStart(WIDTHS[k]!))).join('')}\n`

const studies = option('studies', 2_000)
const seed = option('seed', 1)
// each line's studies in as many shares as there are cores, one line after the other, so that a run that is stopped has told of some
const shares = Math.min(studies, availableParallelism())
process.stdout.write(line(['95 % intervals that hold', 'runs', 'plain', 'told', 'variance', 'width', 'most']))
for (const name of Object.keys(LINES)) {
  const found = await Promise.all(
    Array.from({ length: shares }, (_, k) =>
      share(name, Math.floor(studies / shares) + (k < studies % shares ? 1 : 0), `intervals-${seed}-${k}`),
    ),
  )
  const means = found.flatMap((one) => one.means)
  const weights = found.map((one) => one.means.length)
  const truth = found.reduce((sum, one, k) => sum + one.mean * weights[k]!, 0) / means.length
  coverageOf(means, truth).forEach((one: Coverage, k) => {
    const { runs, plainHeld, toldHeld, variance, widthMedian, widthMost } = one
    const cells = [perCent(plainHeld), perCent(toldHeld), variance.toFixed(2), widthMedian.toFixed(2), widthMost.toFixed(2)]
    process.stdout.write(line([k === 0 ? name : '', String(runs), ...cells]))
  })
}
process.stdout.write(
  `${studies} studies of each; a share of 95 % is seen within ${perCent(1.96 * Math.sqrt((0.95 * 0.05) / studies))} in 95 of 100 such lines\n`,
)
