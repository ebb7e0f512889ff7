import { mostBehind, shareIndexAt } from '@loopwright/stats'
import { makeRoomFor } from '../work/draw.ts'
import type { Line } from '../instant/state.ts'
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
    case 'levelled': {
      const variant = mostBehind(line.mixShares, line.mixShareSum, line.mixGiven, serial)
      line.mixGiven[variant]!++
      return variant
    }
    case 'pattern':
      return line.mixSequence[serial % line.mixSequence.length]!
    case 'list':
      return line.mixSequence[serial]!
  }
}
