import { mostBehind, shareIndexAt } from '@loopwright/stats'
import { makeRoomFor } from '../work/draw.ts'
import type { Line } from '../state/line.ts'
import { LOAD } from '../telling/trace.ts'

/** Whether there is a product for a load station. (MODEL.md §8) */
export function hasProduct(line: Line): boolean {
  const { goods } = line
  return goods.nextSerial < goods.productsMax
}

/** Puts the next product on the carrier now, and tells of it. */
export function takeProduct(line: Line, carrier: number): void {
  const { goods } = line
  putProduct(line, carrier)
  goods.carrierLoaded[carrier] = line.now
  line.collector.onLoad()
  if (line.trace !== null) line.trace.add(line.now, LOAD, line.moves.carrierZone[carrier]!, carrier, goods.carrierSerial[carrier]!)
}

/** The next product on the carrier: its serial, and its variant by the mix; it has had no task. */
export function putProduct(line: Line, carrier: number): void {
  const { goods } = line
  const serial = goods.nextSerial++
  if (serial >= line.draws.taskRoom) makeRoomFor(line, serial)
  goods.carrierSerial[carrier] = serial
  goods.carrierVariant[carrier] = nextVariant(line, serial)
  const first = carrier * line.tasks
  const last = first + line.tasks
  const { taskDone } = line.work
  for (let at = first; at < last; at++) taskDone[at] = 0
  if (!line.hasRejects) return
  const { rejects } = line
  for (let at = first; at < last; at++) rejects.taskListed[at] = 0
  goods.carrierRejected[carrier] = 0
  rejects.carrierFresh[carrier] = 0
}

function nextVariant(line: Line, serial: number): number {
  const { draws, goods } = line
  switch (line.spec.mix.kind) {
    case 'random': {
      draws.streams.next(goods.mixStream)
      return shareIndexAt(goods.mixCumulative, 0, line.variants, draws.streams.u, 0)
    }
    case 'levelled': {
      const variant = mostBehind(goods.mixShares, goods.mixShareSum, goods.mixGiven, serial)
      goods.mixGiven[variant]!++
      return variant
    }
    case 'pattern':
      return goods.mixSequence[serial % goods.mixSequence.length]!
    case 'list':
      return goods.mixSequence[serial]!
  }
}
