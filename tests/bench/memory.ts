/**
 * Memory of one simulator after a run of so many hours: `memory.ts <events|recursion> <block|demo> <hours>`, with `--expose-gc`. Prints bytes that are in use
 * after everything that nobody holds is gone: of the heap, and of typed arrays beside it. The result of the run is let go first.
 */
import { createSimulator, type LineSpec } from '@loopwright/line'
import { lineOfFile } from '../helpers/lineOfFile.ts'
import { blockLoop } from './lines.ts'

const [engine, which, hours] = process.argv.slice(2)
const DEMO = 'scenarios/outdoor-unit-base-line.yaml'

function line(): LineSpec {
  if (which === 'block') return blockLoop(1, Number(hours))
  // the stops of the demo without its breaks, which are a list for one day
  return { ...lineOfFile(DEMO), breaks: [], window: { warmupSeconds: 0, endSeconds: 3600 * Number(hours) } }
}

const simulator = createSimulator(line(), { engine: engine as 'events' | 'recursion' })
let outputs = 0
// twice in the same world: the second run finds the code compiled and the room made
for (let time = 0; time < 2; time++) outputs = simulator.run({ seed: 'memory', replication: 0 }).output
globalThis.gc!()
const { heapUsed, arrayBuffers } = process.memoryUsage()
console.log(JSON.stringify({ outputs, heapUsed, arrayBuffers }))
// still held here, so that nothing of it is gone before
if (simulator.run === undefined) throw new Error('no simulator')
