/** Runs the event engine on the line named from event 4,000,000 to 6,000,000 between two marks, for counting the collections of garbage in between: by then the rare ways have been gone, and what is made fast stays so. */
import { buildLine } from '../../packages/line/src/build/build.ts'
import { handleInstant } from '../../packages/line/src/instant/instant.ts'
import { runQuick } from '../../packages/line/src/quick/quick.ts'
import { makeQuick } from '../../packages/line/src/quick/quickZones.ts'
import { resetLine } from '../../packages/line/src/build/start.ts'
import { GENERAL_LINES } from './generalLines.ts'

const line = buildLine(GENERAL_LINES[process.argv[2]!]!())
resetLine(line, 'allocation', 0)
handleInstant(line)
const quick = makeQuick(line)

function runTo(events: number): void {
  let until = line.now
  while (line.events < events) {
    if (line.queue.size === 0) throw new Error(`the line stands still after ${line.events} events`)
    if (quick !== null) {
      until += 3600
      runQuick(line, quick, until)
    } else {
      line.now = line.queue.times[line.queue.first()]!
      handleInstant(line)
    }
  }
}

runTo(4_000_000)
globalThis.gc!({ type: 'minor' } as never)
console.log('from here')
runTo(6_000_000)
console.log('to here')
