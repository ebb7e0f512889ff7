/** The columns of a line by noun: what never changes is filled, for the rest there is room. */
import { toGrid } from '@loopwright/kernel'
import { cumulativeShares, SamplerTable, StreamTable } from '@loopwright/stats'
import { buildSupplies } from '../goods/arrivals.ts'
import { buildReceivers } from '../goods/receiver.ts'
import { derivedTimes, distinctPaces } from '../moves/motion.ts'
import { type LineSpec, STORE } from '../spec.ts'
import { type Draws, USES_INDEX, USES_NOTHING, USES_UNIFORM } from '../state/draws.ts'
import { ACCEPTS_ALL, ACCEPTS_GOOD, ACCEPTS_REJECTED, type Goods } from '../state/goods.ts'
import type { Graph } from '../state/graph.ts'
import { makeWorkList, NONE } from '../state/lists.ts'
import { type Moves, SAME_AS_MOVE } from '../state/moves.ts'
import type { Slots } from '../state/slots.ts'
import type { Failures, Stops } from '../state/stops.ts'
import type { Transfers } from '../state/transfers.ts'
import type { Work } from '../state/work.ts'
import { buildBreaks, listByPart, plainClears } from '../stops/stopLists.ts'
import { drawnAhead } from '../work/draw.ts'
import { buildDuties } from './duties.ts'
import { startPlaces } from './startPlaces.ts'
import type { Names, Samplers } from '../state/registry.ts'

/** @throws RangeError  if a time is neither given nor can be derived, or a clear is that of a move whose time is not given */
export function buildMoves(spec: LineSpec, { isLoop }: Graph, zoneChanges: Uint8Array, names: Names, samplers: Samplers): Moves {
  const paths = spec.paths.length
  const carriers = spec.carriers.count
  const places = spec.zones.length + 1
  const times = derivedTimes(spec)
  const moveSampler = new Int32Array(paths).fill(NONE)
  const clearSampler = new Int32Array(paths).fill(NONE)
  const moveStream = new Int32Array(paths).fill(NONE)
  const clearStream = new Int32Array(paths).fill(NONE)
  spec.paths.forEach((path, p) => {
    const zone = path.from === STORE ? 'store' : spec.zones[path.from]!.name
    if (path.moveSeconds !== null) {
      moveSampler[p] = samplers.of(path.moveSeconds)
      moveStream[p] = names.of(`move/${zone}`)
    } else needsTime(times.move[4 * p]!, `the move out of zone ${zone}`)
    if (path.from === STORE) return
    if (path.clearSeconds === 'move') {
      if (path.moveSeconds === null) throw new RangeError(`the clear out of zone ${zone} is the draw of its move, which is not given`)
      clearSampler[p] = SAME_AS_MOVE
    } else if (path.clearSeconds !== null) {
      clearSampler[p] = samplers.of(path.clearSeconds)
      clearStream[p] = names.of(`clear/${zone}`)
    } else needsTime(times.clear[2 * p]!, `the clear out of zone ${zone}`)
  })
  return {
    zoneState: new Uint8Array(places),
    zoneCarrier: new Int32Array(places),
    zoneClaimant: new Int32Array(places),
    zoneClearing: new Uint8Array(places),
    leavingPath: new Int32Array(places),
    zoneStarts: new Int32Array(places),
    zoneLastIn: new Int32Array(places),
    zoneWay: new Int32Array(places),
    pathCarrier: new Int32Array(paths),
    pathLooks: new Uint8Array(paths),
    clearIsPlain: plainClears(spec, isLoop, zoneChanges),
    ...distinctPaces(times),
    moveSampler,
    clearSampler,
    moveStream,
    clearStream,
    carrierPhase: new Uint8Array(carriers),
    carrierZone: new Int32Array(carriers),
    startPlaces: startPlaces(spec),
    carrierPath: new Int32Array(carriers),
    carrierSince: new Float64Array(carriers),
    storeItems: new Int32Array(carriers),
    storeFirst: 0,
    storeCount: 0,
    moveList: makeWorkList(places),
    moveSince: new Float64Array(isLoop ? places : 0),
    moveAt: new Int32Array(isLoop ? places : 0),
    startPath: new Int32Array(places),
    lookList: makeWorkList(carriers),
  }
}

function needsTime(seconds: number, what: string): void {
  if (Number.isNaN(seconds)) throw new RangeError(`${what} is neither given nor can it be derived from a drive`)
}

/** @param changes  what of the transfers follows from the paths (graph.ts) */
export function buildTransfers(spec: LineSpec, changes: Omit<Transfers, 'zonePosition' | 'zoneChange' | 'changeList'>): Transfers {
  const zones = spec.zones.length
  // what is spread stands last: an object that begins as a copy has another shape once copying is compiled
  return { zonePosition: new Uint8Array(zones + 1), zoneChange: new Uint8Array(zones + 1), changeList: makeWorkList(zones), ...changes }
}

/**
 * `taskStream`: streams of the tasks, then those of the inspections.
 *
 * @throws RangeError  if two stations stand in one zone
 */
export function buildWork(spec: LineSpec, names: Names, samplers: Samplers): { readonly work: Work; readonly taskStream: Int32Array } {
  const stations = spec.stations.length
  const zoneStation = new Int32Array(spec.zones.length + 1).fill(NONE)
  spec.stations.forEach((station, s) => {
    if (zoneStation[station.zone] !== NONE) throw new RangeError(`two stations stand in zone ${spec.zones[station.zone]!.name}`)
    zoneStation[station.zone] = s
  })
  const duties = buildDuties(spec, samplers)
  const taskStream = Int32Array.from([
    ...spec.tasks.map((task) => names.of(`task/${task}`)),
    ...spec.inspections.map(({ task }) => names.of(`inspect/${spec.tasks[task]}`)),
  ])
  const releaseSampler = Int32Array.from(spec.stations, ({ releaseSeconds: time }) =>
    time.kind === 'constant' && toGrid(time.value) === 0 ? NONE : samplers.of(time),
  )
  const work = {
    zoneStation,
    stationZone: Int32Array.from(spec.stations, (station) => station.zone),
    stationDuty: new Uint8Array(stations),
    stationServed: new Uint8Array(stations),
    ...duties,
    releaseSampler,
    releaseStream: Int32Array.from(spec.stations, (station, s) =>
      releaseSampler[s] === NONE ? NONE : names.of(`release/${station.name}`),
    ),
    taskDone: new Uint8Array(spec.carriers.count * spec.tasks.length),
    workList: makeWorkList(stations),
  }
  return { work, taskStream }
}

export function buildFailures({ breakdowns }: LineSpec, names: Names, samplers: Samplers): Failures {
  return {
    sourceFailure: Int32Array.from(breakdowns, (source) => samplers.of(source.timeToFailureSeconds)),
    sourceRepair: Int32Array.from(breakdowns, (source) => samplers.of(source.repairSeconds)),
    failureStream: Int32Array.from(breakdowns, (source) => names.of(`down/${source.name}`)),
    repairStream: Int32Array.from(breakdowns, (source) => names.of(`repair/${source.name}`)),
  }
}

export function buildStops(spec: LineSpec): Stops {
  const zones = spec.zones.length
  const paths = spec.paths.length
  const sources = spec.breakdowns.length
  return {
    zoneHeld: new Int32Array(zones + 1),
    stationHeld: new Int32Array(spec.stations.length),
    pathHeld: new Uint8Array(paths),
    sourceDown: new Uint8Array(sources),
    sourceCalendar: Uint8Array.from(spec.breakdowns, (source) => (source.clock === 'calendar' ? 1 : 0)),
    sourceLeft: new Float64Array(sources),
    sourceTimed: new Uint8Array(sources),
    stationClocks: listByPart(spec, 'station', spec.stations.length),
    zoneClocks: listByPart(spec, 'zone', zones),
    transferClocks: listByPart(spec, 'transfer', zones),
    stationUntil: new Float64Array(spec.stations.length),
    zoneUntil: new Float64Array(zones),
    transferUntil: new Float64Array(zones),
    knownEnd: new Float64Array(1),
    zonesHeld: makeWorkList(zones),
    stationBreaks: Uint8Array.from(spec.stations, (station) => (station.worksInBreaks ? 0 : 1)),
    breaksNow: 0,
    ...buildBreaks(spec),
    breakNext: 0,
  }
}

export function buildGoods(spec: LineSpec, mixStream: number, names: Names, samplers: Samplers): Goods {
  const carriers = spec.carriers.count
  const { mix } = spec
  const shares = mix.kind === 'random' || mix.kind === 'levelled' ? mix.shares : []
  return {
    carrierSerial: new Int32Array(carriers),
    carrierVariant: new Int32Array(carriers),
    carrierLoaded: new Float64Array(carriers),
    carrierRejected: new Uint8Array(carriers),
    stationAccepts: Uint8Array.from(spec.stations, ({ accepts }) =>
      accepts === 'good' ? ACCEPTS_GOOD : accepts === 'rejected' ? ACCEPTS_REJECTED : ACCEPTS_ALL,
    ),
    nextSerial: 0,
    productsMax: mix.kind === 'list' ? mix.sequence.length : Number.POSITIVE_INFINITY,
    mixStream,
    mixSequence: mix.kind === 'pattern' || mix.kind === 'list' ? Int32Array.from(mix.sequence) : new Int32Array(0),
    mixShares: Float64Array.from(shares),
    mixCumulative: cumulativeShares(shares),
    mixGiven: new Float64Array(spec.variants.length),
    mixShareSum: shares.reduce((sum, share) => sum + share, 0),
    ...buildSupplies(spec, names, samplers),
    productsAside: 0,
    ...buildReceivers(spec, names, samplers),
  }
}

/** First room of the ring of a task. */
const ROOM = 64

/** Made last, when all names and samplers are known. */
export function buildDraws(spec: LineSpec, names: Names, samplers: Samplers, taskStream: Int32Array, entrySampler: Int32Array): Draws {
  const table = new SamplerTable(samplers.list)
  return {
    streams: new StreamTable('unset', 0, names.list),
    samplers: table,
    samplerUses: Uint8Array.from(samplers.list, (_, k) => {
      const uses = table.uses(k)
      return uses === 'nothing' ? USES_NOTHING : uses === 'uniform' ? USES_UNIFORM : USES_INDEX
    }),
    drawn: new Float64Array(1),
    streamUses: new Int32Array(names.list.length),
    taskStream,
    taskUniforms: new Float64Array(ROOM * taskStream.length),
    taskRoom: ROOM,
    oldestSerial: 0,
    taskDrawn: new Int32Array(taskStream.length),
    taskAhead: drawnAhead(spec, entrySampler, table, taskStream.length),
  }
}

/** How many slots there are of kinds that only some lines have. */
interface Kinds {
  readonly operators: number
  /** 0 where products are always there */
  readonly supplies: number
  /** true: some station has a receiver */
  readonly receives: boolean
}

export function buildSlots(spec: LineSpec, { operators, supplies, receives }: Kinds): { readonly slots: Slots; readonly length: number } {
  const zones = spec.zones.length
  const stations = spec.stations.length
  const carriers = spec.carriers.count
  const watched = spec.stations.some(({ safetyStop }) => safetyStop !== null) ? carriers : 0
  const stored = spec.paths.some((path) => path.from === STORE || path.to === STORE) ? carriers : 0
  const breakSlot = spec.breakdowns.length
  const safetySlot = breakSlot + 1
  const resetSlot = safetySlot + watched
  const arrivalSlot = resetSlot + 3 * watched
  const clearSlot = arrivalSlot + spec.paths.length
  const workSlot = clearSlot + zones
  const changeSlot = workSlot + stations
  const storeSlot = changeSlot + zones
  const operatorSlot = storeSlot + stored
  const supplySlot = operatorSlot + operators
  const receiverSlot = supplySlot + supplies
  const length = receiverSlot + (receives ? stations : 0)
  const slots = {
    breakSlot,
    safetySlot,
    resetSlot,
    arrivalSlot,
    clearSlot,
    workSlot,
    changeSlot,
    storeSlot,
    operatorSlot,
    supplySlot,
    receiverSlot,
    left: new Float64Array(length),
    isHeldBack: new Uint8Array(length),
    due: new Int32Array(length),
  }
  return { slots, length }
}
