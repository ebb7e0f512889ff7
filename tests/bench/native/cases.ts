/** What is timed beside C++: both engines of the product, each in turns with the same one of the program, by processor time. */
import { dirname, join } from 'node:path'
import { createSimulator } from '@loopwright/line'
import type { Case, Figures, Part } from '../cases.ts'
import { blockLoop } from '../lines.ts'
import { type NativeEngine, runNative } from './native.ts'

/** How the program is compiled, by what its figures and its file are called. */
export const NATIVE_FLAGS: Readonly<Record<string, readonly string[]>> = {
  native: ['-O2'],
  nativeO3: ['-O3', '-march=native'],
}

const SEED = 'bench'
const TURNS = 12

function processorSecondsOf(work: () => void): number {
  const start = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(start)
  return (user + system) / 1e6
}

/** The programs stand beside the file that runs, where bench.ts has put them. */
const programs = (): Record<string, string> =>
  Object.fromEntries(Object.keys(NATIVE_FLAGS).map((name) => [name, join(dirname(process.argv[1]!), name)]))

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!

/** `shareOf…`: the program's time as a share of the product's, median of the turns. */
function besideNative(engine: NativeEngine, share: number): Figures {
  const line = blockLoop(1, 8)
  const simulator = createSimulator(line, { engine })
  const [warm, timed] = [Math.ceil(200 * share), Math.ceil((1_000 / TURNS) * share)]
  let replication = 0
  let events = 0
  const run = (count: number): void => {
    for (let k = 0; k < count; k++) events += simulator.run({ seed: SEED, replication: replication++ }).events
  }
  run(warm)
  const ours: number[] = []
  const theirs: Record<string, number[]> = Object.fromEntries(Object.keys(NATIVE_FLAGS).map((name) => [name, []]))
  for (let turn = 0; turn < TURNS; turn++) {
    const from = replication
    events = 0
    ours.push(processorSecondsOf(() => run(timed)))
    for (const [name, program] of Object.entries(programs())) {
      const told = JSON.parse(runNative(program, line, [engine, 'time', SEED, String(from), String(timed)])) as {
        seconds: number
        events: number
      }
      if (told.events !== events) throw new Error(`the program counts ${told.events} events where there are ${events}`)
      theirs[name]!.push(told.seconds)
    }
  }
  const figures: Record<string, number> = { replicationsPerSecond: timed / median(ours) }
  for (const [name, seconds] of Object.entries(theirs)) {
    figures[`${name}ReplicationsPerSecond`] = timed / median(seconds)
    figures[`shareOf${name[0]!.toUpperCase()}${name.slice(1)}`] = median(seconds.map((one, turn) => one / ours[turn]!))
  }
  return figures
}

const part =
  (engine: NativeEngine): Part =>
  (share) =>
    besideNative(engine, share)

export const NATIVE: Record<string, Case> = {
  native: {
    about: `the line of small: 1,000 replications in ${TURNS} turns with C++ (-O2, and -O3 -march=native), seconds of processor time`,
    byEngine: false,
    elsewhere: false,
    parts: { events: part('events'), recursion: part('recursion') },
  },
}
