/** What a run of the benchmarks tells, as one document. */
import { cpus, loadavg, totalmem } from 'node:os'
import type { Case, Figures } from './cases.ts'

/** One part of a case, run once in a process of its own. */
export interface Sample {
  /** nanoseconds a turn of the calibrating loop, in the same process */
  readonly calibration: number
  readonly figures: Figures
}

export interface Told {
  /** of the rounds */
  readonly median: number
  /** least and greatest */
  readonly spread: readonly [number, number]
  /** median over the rounds: the time of one replication, simulated hour, event, hold or whole in turns of the calibrating loop; null where the figure tells no time */
  readonly ratio: number | null
  /** least and greatest of these */
  readonly ratioSpread: readonly [number, number] | null
}

export interface PartTold {
  readonly calibrationNanoseconds: number
  readonly [figure: string]: Told | number
}

export interface CaseTold {
  readonly name: string
  readonly about: string
  /** of a case about the engines */
  readonly engines?: Readonly<Record<string, PartTold>>
  /** of any other */
  readonly parts?: Readonly<Record<string, PartTold>>
}

export interface BenchDocument {
  readonly machine: {
    readonly processor: string
    readonly cores: number
    readonly memoryGigabytes: number
    /** mean number of processes that ran or would have, in the last minute */
    readonly load: number
  }
  readonly versions: { readonly loopwright: string; readonly node: string; readonly v8: string; readonly system: string }
  /** processes for each part */
  readonly rounds: number
  readonly cases: readonly CaseTold[]
}

/**
 * @param cases    by name
 * @param samples  by `case/part`, one for each round
 */
export function benchDocument(
  cases: Readonly<Record<string, Case>>,
  samples: ReadonlyMap<string, readonly Sample[]>,
  about: { readonly rounds: number; readonly version: string },
): BenchDocument {
  return {
    machine: {
      processor: cpus()[0]?.model ?? 'unknown',
      cores: cpus().length,
      memoryGigabytes: totalmem() / 2 ** 30,
      load: loadavg()[0]!,
    },
    versions: {
      loopwright: about.version,
      node: process.version,
      v8: process.versions.v8,
      system: `${process.platform} ${process.arch}`,
    },
    rounds: about.rounds,
    cases: Object.entries(cases).map(([name, { about: sentence, parts, byEngine }]) => {
      const told = Object.fromEntries(Object.keys(parts).map((part) => [part, partTold(samples.get(`${name}/${part}`)!)]))
      return { name, about: sentence, ...(byEngine ? { engines: told } : { parts: told }) }
    }),
  }
}

function partTold(samples: readonly Sample[]): PartTold {
  const figures = Object.keys(samples[0]!.figures).map((figure) => {
    const values = samples.map((one) => one.figures[figure]!)
    const ratios = samples.map((one) => ratio(figure, one.figures[figure]!, one.calibration))
    const known = ratios.filter((one) => one !== null)
    const told: Told = {
      median: median(values),
      spread: spread(values),
      ratio: known.length === 0 ? null : median(known),
      ratioSpread: known.length === 0 ? null : spread(known),
    }
    return [figure, told] as const
  })
  return { calibrationNanoseconds: median(samples.map((one) => one.calibration)), ...Object.fromEntries(figures) }
}

/** The time that a figure tells, in turns of the calibrating loop; null where it tells no time. */
function ratio(figure: string, value: number, calibration: number): number | null {
  if (figure.endsWith('PerSecond')) return 1e9 / value / calibration
  if (figure.startsWith('nanoseconds')) return value / calibration
  return figure === 'seconds' ? (value * 1e9) / calibration : null
}

const spread = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)]

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2
}

/** The same for a person to read. */
export function benchText({ machine, versions, rounds, cases }: BenchDocument): string {
  const lines = [
    `${machine.processor}, ${machine.cores} cores, Node ${versions.node}, load ${machine.load.toFixed(1)}; medians of ${rounds} fresh processes`,
  ]
  for (const { name, about, engines, parts } of cases) {
    lines.push('', `${name}: ${about}`)
    for (const [part, { calibrationNanoseconds, ...figures }] of Object.entries(engines ?? parts ?? {})) {
      lines.push(`  ${part} (calibrating loop ${calibrationNanoseconds.toFixed(2)} ns a turn)`)
      for (const [figure, told] of Object.entries(figures as Record<string, Told>)) {
        const turns = told.ratio === null ? '' : `   ${told.ratio.toPrecision(4)} turns of the calibrating loop each`
        const [least, greatest] = told.spread
        lines.push(
          `    ${figure.padEnd(24)} ${told.median.toPrecision(4).padStart(10)}   (${least.toPrecision(4)} … ${greatest.toPrecision(4)})${turns}`,
        )
      }
    }
  }
  return lines.join('\n')
}
