/** Supplies and receivers. (MODEL.md §8) */
import type { ArrivalsSpec, LineSpec } from '@loopwright/line'
import type { Draws } from './draws.ts'
import { listHasMore } from './duties.ts'
import { onGrid } from './grid.ts'
import type { Receiver, Supply, World } from './world.ts'

export function openSupplies(spec: LineSpec, draws: Draws): (Supply | null)[] {
  const all = [spec.supply, ...spec.stations.map((station) => station.supply)]
  return all.map((supply) =>
    supply === null ? null : { name: supply.name, queue: [], nextLeft: nextArrival(draws, supply.name, supply.arrivals, 0, 0), came: 0 },
  )
}

export function openReceivers(spec: LineSpec): (Receiver | null)[] {
  return spec.stations.map(({ receiver, unload }) =>
    receiver === null || unload === null ? null : { left: null, waiting: 0, setAside: false },
  )
}

/** seconds from `now` to the arrival of product k of the supply; null: there is none */
function nextArrival(draws: Draws, name: string, arrivals: ArrivalsSpec, k: number, now: number): number | null {
  if (arrivals.kind === 'always') return null
  if (arrivals.kind === 'every') return draws.inOrder(`arrival/${name}`, arrivals.seconds)
  return k < arrivals.instants.length ? onGrid(arrivals.instants[k]!) - now : null
}

/** index into `World.supplies` of the supply that the station takes from */
function supplyIndexOf(w: World, station: number): number {
  return w.supplies[station + 1] === null ? 0 : station + 1
}

export function supplySpecAt(w: World, index: number) {
  return index === 0 ? w.spec.supply : w.spec.stations[index - 1]!.supply!
}

/** Ends one time between arrivals; false: none ends now. "An arrival that finds the queue full is turned away and counted; the clock of arrivals goes on." */
export function endOneArrival(w: World): boolean {
  const index = w.supplies.findIndex((supply) => supply?.nextLeft === 0)
  if (index < 0) return false
  const supply = w.supplies[index]!
  const { arrivals, queueLimit } = supplySpecAt(w, index)
  const entry = { t: w.t, supply: index, number: supplyNumber(w, index), before: supply.came }
  supply.came += 1
  supply.nextLeft = nextArrival(w.draws, supply.name, arrivals, supply.came, w.t)
  if (queueLimit !== null && supply.queue.length >= queueLimit) {
    w.log.push({ ...entry, what: 'turned away' })
    return true
  }
  supply.queue.push({ since: w.t, setAsideFor: null })
  w.log.push({ ...entry, what: 'product arrival', queue: supply.queue.length })
  return true
}

/** the line's supply is number 0; those of stations follow */
function supplyNumber(w: World, index: number): number {
  return w.supplies.slice(0, index).filter((supply, before) => supply !== null || before === 0).length
}

/** whether a product is there that nobody has set aside */
export function productIsThere(w: World, station: number): boolean {
  if (!listHasMore(w, w.setAside.filter((aside) => aside).length)) return false
  const index = supplyIndexOf(w, station)
  return supplySpecAt(w, index).arrivals.kind === 'always' || w.supplies[index]!.queue.some(({ setAsideFor }) => setAsideFor === null)
}

export function setProductAside(w: World, station: number): void {
  w.setAside[station] = true
  const queue = w.supplies[supplyIndexOf(w, station)]!.queue
  const first = queue.find(({ setAsideFor }) => setAsideFor === null)
  if (first !== undefined) first.setAsideFor = station
}

/** "the product leaves the queue at the start of the work" */
export function takeProduct(w: World, station: number): void {
  w.setAside[station] = false
  const index = supplyIndexOf(w, station)
  const supply = w.supplies[index]!
  const place = supply.queue.findIndex(({ setAsideFor }) => setAsideFor === station)
  if (place < 0) return
  const [product] = supply.queue.splice(place, 1)
  w.log.push({ t: w.t, what: 'taken from queue', supply: index, waited: w.t - product!.since })
}

/** whether a product for this station is still to come */
export function productIsToCome(w: World, station: number): boolean {
  return listHasMore(w, w.setAside.filter((aside) => aside).length) && w.supplies[supplyIndexOf(w, station)]!.nextLeft !== null
}

/** "It is ready when a place (or, with none waiting, the receiver itself) is neither taken nor set aside" */
export function receiverIsReady(w: World, station: number): boolean {
  const receiver = w.receivers[station]!
  if (receiver === null) return true
  const taken = (receiver.left === null ? 0 : 1) + receiver.waiting + (receiver.setAside ? 1 : 0)
  return taken < w.spec.stations[station]!.receiver!.queue + 1
}

/** "An unloaded product goes to it at the end of the unload tasks; it works cycleSeconds on one at a time" */
export function receive(w: World, station: number): void {
  const receiver = w.receivers[station]!
  if (receiver === null) return
  receiver.setAside = false
  receiver.waiting += 1
  beginCycle(w, station, receiver)
}

function beginCycle(w: World, station: number, receiver: Receiver): void {
  if (receiver.left !== null || receiver.waiting === 0) return
  receiver.waiting -= 1
  const { name, receiver: spec } = w.spec.stations[station]!
  receiver.left = w.draws.inOrder(`receiver/${name}`, spec!.cycleSeconds)
  w.log.push({ t: w.t, what: 'receiver start', station })
}

export function endOneReceiverCycle(w: World): boolean {
  const station = w.receivers.findIndex((receiver) => receiver?.left === 0)
  if (station < 0) return false
  const receiver = w.receivers[station]!
  receiver.left = null
  w.log.push({ t: w.t, what: 'receiver end', station })
  beginCycle(w, station, receiver)
  return true
}
