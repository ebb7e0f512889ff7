/** Receivers: what unloaded products go to, one at a time, with places before it. (MODEL.md §8) */
import { drawInOrder } from '../work/draw.ts'
import type { Names, Samplers } from '../state/registry.ts'
import type { LineSpec } from '../spec.ts'
import type { Goods } from '../state/goods.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { startTimer } from '../state/timer.ts'
import { RECEIVER_END, RECEIVER_START } from '../telling/trace.ts'

/** Receivers by station, as columns. */
export function buildReceivers(
  spec: LineSpec,
  names: Names,
  samplers: Samplers,
): Pick<Goods, 'receiverSampler' | 'receiverStream' | 'receiverPlaces' | 'receiverBusy' | 'receiverWaiting' | 'receiverAside'> {
  const stations = spec.stations.length
  return {
    receiverSampler: Int32Array.from(spec.stations, ({ receiver }) => (receiver === null ? NONE : samplers.of(receiver.cycleSeconds))),
    receiverStream: Int32Array.from(spec.stations, ({ name, receiver }) => (receiver === null ? NONE : names.of(`receiver/${name}`))),
    receiverPlaces: Int32Array.from(spec.stations, ({ receiver }) => receiver?.queue ?? 0),
    receiverBusy: new Uint8Array(stations),
    receiverWaiting: new Int32Array(stations),
    receiverAside: new Uint8Array(stations),
  }
}

/** Whether the receiver of the unload station has a place that is neither taken nor set aside. */
export function canReceive(line: Line, station: number): boolean {
  const { goods } = line
  if (goods.receiverAside[station] === 1) return false
  return goods.receiverBusy[station] === 0 || goods.receiverWaiting[station]! < goods.receiverPlaces[station]!
}

export function reserveReceiver(line: Line, station: number): void {
  line.goods.receiverAside[station] = 1
}

/** The unload tasks have ended: the product goes to the receiver. */
export function deliver(line: Line, station: number): void {
  const { goods } = line
  if (goods.receiverSampler[station] === NONE) return
  goods.receiverAside[station] = 0
  if (goods.receiverBusy[station] === 1) goods.receiverWaiting[station]!++
  else startReceiver(line, station)
}

function startReceiver(line: Line, station: number): void {
  const { goods, slots } = line
  goods.receiverBusy[station] = 1
  drawInOrder(line, goods.receiverSampler[station]!, goods.receiverStream[station]!)
  line.queue.times[slots.receiverSlot + station] = line.now + line.draws.drawn[0]!
  startTimer(line, slots.receiverSlot + station)
  if (line.trace !== null) line.trace.add(line.now, RECEIVER_START, station, NONE, 0)
}

export function onReceiverEnd(line: Line, station: number): void {
  const { goods } = line
  if (line.trace !== null) line.trace.add(line.now, RECEIVER_END, station, NONE, 0)
  goods.receiverBusy[station] = 0
  line.calls.asideDue = true
  if (goods.receiverWaiting[station] === 0) return
  goods.receiverWaiting[station]!--
  startReceiver(line, station)
}
