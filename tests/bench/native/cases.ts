/** What is timed beside C++: both engines of the product, each in turns with the same one of the program, by processor time. */
import { dirname, join } from 'node:path'
import { createSimulator } from '@loopwright/line'
import type { Case, Figures, Part } from '../cases.ts'
import { blockLoop } from '../lines.ts'
import { type NativeEngine, startNative } from './native.ts'

/** How the program is compiled, by what its figures and its file are called. */
export const NATIVE_FLAGS: Readonly<Record<string, readonly string[]>> = {
  native: ['-O2'],
  nativeO3: ['-O3', '-march=native'],
}

const SEED = 'bench'
/** of so few milliseconds that some of them find the machine quiet */
const TURNS = 400

function processorSecondsOf(work: () => void): number {
  const start = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(start)
  return (user + system) / 1e6
}

/**
 * What neighbours take from a turn is never given back, so that the quicker turns are the nearest to what the work costs. Not the quickest one: clocks of processes at
 * times count a part of a turn only.
 */
const quickTenth = (values: readonly number[]): number => values.toSorted((one, other) => one - other)[Math.floor(values.length / 10)]!

/** `shareOf…`: the program's time as a share of the product's. */
async function besideNative(engine: NativeEngine, share: number): Promise<Figures> {
  const line = blockLoop(1, 8)
  const simulator = createSimulator(line, { engine })
  const run = (first: number, count: number): number => {
    let events = 0
    for (let k = first; k < first + count; k++) events += simulator.run({ seed: SEED, replication: k }).events
    return events
  }
  const warm = Math.ceil(300 * share)
  const each = Math.ceil((2_000 / TURNS) * share)
  // beside the file that runs, where bench.ts has put them
  const programs = Object.keys(NATIVE_FLAGS).map((name) => ({
    name,
    seconds: [] as number[],
    running: startNative(join(dirname(process.argv[1]!), name), line, engine, SEED),
  }))
  const ours: number[] = []
  run(0, warm)
  for (const { running } of programs) await running.time(0, warm)
  for (let turn = 0; turn < TURNS * Math.min(1, 10 * share); turn++) {
    const first = warm + turn * each
    let events = 0
    ours.push(processorSecondsOf(() => (events = run(first, each))))
    for (const { running, seconds } of programs) {
      const told = await running.time(first, each)
      if (told.events !== events) throw new Error(`the program counts ${told.events} events where there are ${events}`)
      seconds.push(told.seconds)
    }
  }
  const figures: Record<string, number> = { replicationsPerSecond: each / quickTenth(ours) }
  for (const { name, seconds, running } of programs) {
    running.end()
    figures[`${name}ReplicationsPerSecond`] = each / quickTenth(seconds)
    figures[`shareOf${name[0]!.toUpperCase()}${name.slice(1)}`] = quickTenth(seconds) / quickTenth(ours)
  }
  return figures
}

const part =
  (engine: NativeEngine): Part =>
  (share) =>
    besideNative(engine, share)

export const NATIVE: Record<string, Case> = {
  native: {
    about: `the line of small: 2,000 replications in ${TURNS} turns with C++ (-O2, and -O3 -march=native); processor time of a turn, of which a tenth are quicker`,
    byEngine: false,
    elsewhere: false,
    parts: { events: part('events'), recursion: part('recursion') },
  },
}
