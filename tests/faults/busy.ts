/** A process that is busy for some seconds, with a plain loop or with runs of a small line, and then says how often it was round and what processor time that took. */
import { readFileSync } from 'node:fs'
import { createSimulator } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
import { now } from './clock.ts'

const [kind, seconds] = process.argv.slice(2)
const SMALL = new URL('../helpers/scenarios/small.yaml', import.meta.url)

/** Numbers that follow from each other, in no memory but registers. */
function plain(): void {
  let x = 1
  for (let step = 0; step < 100_000; step += 1) x = (Math.imul(x, 1_664_525) + 1_013_904_223) | 0
  if (x === 0) throw new Error('a generator of full period came to its start')
}

function runs(): () => void {
  const simulator = createSimulator(readScenario(readFileSync(SMALL, 'utf8')).scenario!.line)
  let replication = 0
  return () => void simulator.run({ seed: 'busy', replication: replication++ })
}

const round = kind === 'runs' ? runs() : plain
const busyFor = (milliseconds: number): { rounds: number; milliseconds: number } => {
  const start = now()
  let rounds = 0
  while (now() - start < milliseconds) {
    round()
    rounds += 1
  }
  return { rounds, milliseconds: now() - start }
}
// until its code is compiled, however long others hold the processor
while (process.cpuUsage().user < 1_500_000) busyFor(100)
const before = process.cpuUsage()
const { rounds, milliseconds } = busyFor(1000 * Number(seconds))
const { user, system } = process.cpuUsage(before)
process.stdout.write(JSON.stringify({ perSecond: (1000 * rounds) / milliseconds, processorMs: (user + system) / 1000 / rounds }))
