/** Supplies: products that arrive, wait in a queue and are set aside for load stations. (MODEL.md §8) */
import { toGrid } from '@loopwright/kernel'
import { drawInOrder } from '../work/draw.ts'
import { CHANGE_AT, Level } from '../telling/level.ts'
import type { Names, Samplers } from '../state/registry.ts'
import type { LineSpec, SupplySpec } from '../spec.ts'
import type { Goods, Supply } from '../state/goods.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { addToTally, TALLY, VALUE } from '../telling/tally.ts'
import { startTimer } from '../state/timer.ts'
import { PRODUCT_ARRIVAL, TURNED_AWAY } from '../telling/trace.ts'

type Supplies = Pick<Goods, 'supplies' | 'stationSupply' | 'productSince'>

/** The line's own supply comes first, then those of stations. */
export function buildSupplies(spec: LineSpec, names: Names, samplers: Samplers): Supplies {
  const build = ({ name, arrivals, queueLimit }: SupplySpec): Supply => ({
    name,
    always: arrivals.kind === 'always',
    sampler: arrivals.kind === 'every' ? samplers.of(arrivals.seconds) : NONE,
    stream: arrivals.kind === 'every' ? names.of(`arrival/${name}`) : NONE,
    instants: Float64Array.from(arrivals.kind === 'list' ? arrivals.instants : [], toGrid),
    limit: queueLimit ?? Number.POSITIVE_INFINITY,
    arrived: 0,
    since: new Float64Array(16),
    first: 0,
    waiting: 0,
    aside: 0,
    queue: new Level(),
    arrivals: 0,
    turnedAway: 0,
    queueMax: 0,
    times: new Float64Array(TALLY),
  })
  const supplies = [build(spec.supply)]
  const stationSupply = Int32Array.from(spec.stations, ({ supply }) => (supply === null ? 0 : supplies.push(build(supply)) - 1))
  return { supplies, stationSupply, productSince: new Float64Array(spec.stations.length) }
}

export function resetSupplies(line: Line): void {
  const { goods } = line
  goods.productsAside = 0
  for (const [k, supply] of goods.supplies.entries()) {
    supply.arrived = 0
    supply.first = 0
    supply.waiting = 0
    supply.aside = 0
    supply.queue.count = 0
    nextArrival(line, k)
  }
  restartSupplies(line, 0)
}

/** The warm-up is over at `now`: what was counted is forgotten. */
export function restartSupplies(line: Line, now: number): void {
  for (const supply of line.goods.supplies) {
    supply.queue.restart(now)
    supply.arrivals = 0
    supply.turnedAway = 0
    supply.queueMax = supply.queue.count
    supply.times.fill(0)
  }
}

/** Whether a product is to come, as far as the supply of the station goes. */
export function isToCome(line: Line, station: number): boolean {
  const { goods } = line
  const supply = goods.supplies[goods.stationSupply[station]!]!
  if (goods.nextSerial + goods.productsAside >= goods.productsMax) return false
  return supply.always || supply.sampler !== NONE || supply.arrived < supply.instants.length
}

function nextArrival(line: Line, k: number): void {
  const supply = line.goods.supplies[k]!
  const slot = line.slots.supplySlot + k
  if (supply.sampler !== NONE) {
    drawInOrder(line, supply.sampler, supply.stream)
    line.queue.times[slot] = line.now + line.draws.drawn[0]!
  } else if (supply.arrived < supply.instants.length) line.queue.times[slot] = supply.instants[supply.arrived]!
  else return
  startTimer(line, slot)
}

/** A product has come: into the queue, or away where that is full; the clock of arrivals goes on. */
export function onProductArrival(line: Line, k: number): void {
  const supply = line.goods.supplies[k]!
  supply.arrived++
  supply.arrivals++
  if (supply.queue.count >= supply.limit) {
    supply.turnedAway++
    if (line.trace !== null) line.trace.add(line.now, TURNED_AWAY, k, NONE, supply.arrived - 1)
  } else {
    supply.queue.sums[CHANGE_AT] = line.now
    supply.queue.change(1)
    if (supply.queue.count > supply.queueMax) supply.queueMax = supply.queue.count
    if (supply.waiting === supply.since.length) widen(supply)
    supply.since[(supply.first + supply.waiting++) & (supply.since.length - 1)] = line.now
    line.calls.asideDue = true
    if (line.trace !== null) line.trace.add(line.now, PRODUCT_ARRIVAL, k, NONE, supply.arrived - 1)
  }
  nextArrival(line, k)
}

function widen(supply: Supply): void {
  const wider = new Float64Array(2 * supply.since.length)
  for (let k = 0; k < supply.waiting; k++) wider[k] = supply.since[(supply.first + k) & (supply.since.length - 1)]!
  supply.since = wider
  supply.first = 0
}

/** Whether a product is there for the load station that is not set aside for another. */
export function hasProductFor(line: Line, station: number): boolean {
  const { goods } = line
  if (goods.nextSerial + goods.productsAside >= goods.productsMax) return false
  const supply = goods.supplies[goods.stationSupply[station]!]!
  return supply.always || supply.waiting > 0
}

export function reserveProduct(line: Line, station: number): void {
  const { goods } = line
  const supply = goods.supplies[goods.stationSupply[station]!]!
  goods.productsAside++
  supply.aside++
  if (supply.always) return
  goods.productSince[station] = supply.since[supply.first]!
  supply.first = (supply.first + 1) & (supply.since.length - 1)
  supply.waiting--
}

/** The load starts: the product that was set aside leaves the queue. */
export function takeFromQueue(line: Line, station: number): void {
  const { goods } = line
  const supply = goods.supplies[goods.stationSupply[station]!]!
  goods.productsAside--
  supply.aside--
  if (supply.always) return
  supply.queue.sums[CHANGE_AT] = line.now
  supply.queue.change(-1)
  supply.times[VALUE] = line.now - goods.productSince[station]!
  addToTally(supply.times)
}
