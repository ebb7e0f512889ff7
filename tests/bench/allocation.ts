/** Runs the event engine on the line named from event 300,000 to 2,300,000 between two marks, for counting the collections of garbage in between. */
import { buildLine } from '../../packages/line/src/build.ts'
import { handleInstant } from '../../packages/line/src/instant.ts'
import { resetLine } from '../../packages/line/src/start.ts'
import { GENERAL_LINES } from './generalLines.ts'

const line = buildLine(GENERAL_LINES[process.argv[2]!]!())
resetLine(line, 'allocation', 0)

function runTo(events: number): void {
  while (line.events < events) {
    handleInstant(line)
    if (line.queue.size === 0) throw new Error(`the line stands still after ${line.events} events`)
    line.now = line.queue.times[line.queue.first()]!
  }
}

runTo(300_000)
globalThis.gc!({ type: 'minor' } as never)
console.log('from here')
runTo(2_300_000)
console.log('to here')
