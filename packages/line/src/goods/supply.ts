import { shareIndexAt } from '@loopwright/stats'
import { makeRoomFor } from '../work/draw.ts'
import { type Line, NONE } from '../instant/state.ts'
import { LOAD } from '../telling/trace.ts'

/** Whether there is a product for a load station. (MODEL.md §8) */
export function hasProduct(line: Line): boolean {
  return line.nextSerial < line.productsMax
}

/** Puts the next product on the carrier now, and tells of it. */
export function takeProduct(line: Line, carrier: number): void {
  putProduct(line, carrier)
  line.carrierLoaded[carrier] = line.now
  line.collector.onLoad()
  if (line.trace !== null) line.trace.add(line.now, LOAD, line.carrierZone[carrier]!, carrier, line.carrierSerial[carrier]!)
}

/** The next product on the carrier: its serial, and its variant by the mix; it has had no task. */
export function putProduct(line: Line, carrier: number): void {
  const serial = line.nextSerial++
  if (serial >= line.taskRoom) makeRoomFor(line, serial)
  line.carrierSerial[carrier] = serial
  line.carrierVariant[carrier] = nextVariant(line, serial)
  const first = carrier * line.tasks
  line.taskDone.fill(0, first, first + line.tasks)
  if (!line.hasRejects) return
  line.rejects.taskListed.fill(0, first, first + line.tasks)
  line.carrierRejected[carrier] = 0
  line.rejects.carrierFresh[carrier] = 0
}

function nextVariant(line: Line, serial: number): number {
  switch (line.spec.mix.kind) {
    case 'random': {
      line.streams.next(line.mixStream)
      return shareIndexAt(line.mixCumulative, 0, line.variants, line.streams.u, 0)
    }
    case 'levelled':
      return levelledVariant(line, serial)
    case 'pattern':
      return line.mixSequence[serial % line.mixSequence.length]!
    case 'list':
      return line.mixSequence[serial]!
  }
}

/** The variant with the largest w·(k + 1) − W·(number so far); ties: first in the list. */
function levelledVariant(line: Line, serial: number): number {
  let best = NONE
  let bestLag = 0
  for (let v = 0; v < line.variants; v++) {
    const share = line.mixShares[v]!
    if (share === 0) continue
    const lag = share * (serial + 1) - line.mixShareSum * line.mixGiven[v]!
    if (best === NONE || lag > bestLag) {
      best = v
      bestLag = lag
    }
  }
  line.mixGiven[best]!++
  return best
}
