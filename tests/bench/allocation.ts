/** Runs the event engine from event 100,000 to 1,100,000 between two marks, for counting the collections of garbage in between. */
import { buildLine } from '../../packages/line/src/build.ts'
import { handleInstant } from '../../packages/line/src/instant.ts'
import { resetLine } from '../../packages/line/src/start.ts'
import { blockLoop } from './lines.ts'

const line = buildLine(blockLoop(1, 10_000))
resetLine(line, 'allocation', 0)

function runTo(events: number): void {
  while (line.events < events) {
    handleInstant(line)
    line.now = line.queue.times[line.queue.first()]!
  }
}

runTo(100_000)
console.log('from here')
runTo(1_100_000)
console.log('to here')
