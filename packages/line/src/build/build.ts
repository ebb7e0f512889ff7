/** From a LineSpec to the arrays that run: what never changes is worked out once, and all room is taken here. */
import { TimerQueue, toGrid } from '@loopwright/kernel'
import { cumulativeShares, SamplerTable, StreamTable } from '@loopwright/stats'
import { buildSupplies } from '../goods/arrivals.ts'
import { makeCalls } from '../work/calls.ts'
import { Collector } from '../telling/collect.ts'
import { makeCrew } from '../stops/crew.ts'
import { drawnAhead } from '../work/draw.ts'
import { buildDuties } from './duties.ts'
import { buildGraph, isPlainLoop } from './graph.ts'
import { derivedTimes, distinctPaces } from '../moves/motion.ts'
import { buildOperators } from '../operators/operators.ts'
import { buildReceivers } from '../goods/receiver.ts'
import { Names, Samplers } from './registry.ts'
import { buildRejects } from '../goods/rejects.ts'
import { buildSafety } from '../stops/safety.ts'
import { buildSections } from './sections.ts'
import { type LineSpec, STORE } from '../spec.ts'
import {
  ACCEPTS_ALL,
  ACCEPTS_GOOD,
  ACCEPTS_REJECTED,
  type Line,
  makeWorkList,
  NONE,
  type PartList,
  SAME_AS_MOVE,
  USES_INDEX,
  USES_NOTHING,
  USES_UNIFORM,
} from '../instant/state.ts'
import { buildBreaks, listByPart, plainClears } from '../stops/stopLists.ts'

/**
 * Builds a line; `resetLine` of start.ts sets it to time 0.
 *
 * @param backwards  store simultaneous timers in the opposite order (for tests: it must change nothing)
 * @throws RangeError  if a path leads nowhere, a closed loop is full, a time is neither given nor derivable, or the line has something that cannot be run
 */
export function buildLine(spec: LineSpec, backwards = false): Line {
  checkPaths(spec)
  const names = new Names()
  const samplers = new Samplers()
  const zones = spec.zones.length
  const paths = spec.paths.length
  const carriers = spec.carriers.count
  const stations = spec.stations.length
  const sources = spec.breakdowns.length
  const times = derivedTimes(spec)
  const places = zones + 1
  const graph = buildGraph(spec)

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

  const zoneStation = new Int32Array(places).fill(NONE)
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
  const releaseStream = Int32Array.from(spec.stations, (station, s) =>
    releaseSampler[s] === NONE ? NONE : names.of(`release/${station.name}`),
  )
  const sourceFailure = Int32Array.from(spec.breakdowns, (source) => samplers.of(source.timeToFailureSeconds))
  const sourceRepair = Int32Array.from(spec.breakdowns, (source) => samplers.of(source.repairSeconds))
  const failureStream = Int32Array.from(spec.breakdowns, (source) => names.of(`down/${source.name}`))
  const repairStream = Int32Array.from(spec.breakdowns, (source) => names.of(`repair/${source.name}`))
  const mixStream = names.of('mix')
  const operating = (kind: string, count: number): PartList => listByPart(spec, kind, count)
  const sectionClocks = operating('section', spec.sections.length)
  const sections = buildSections(spec)
  const operators = buildOperators(spec)
  const supplies = buildSupplies(spec, names, samplers)
  const receivers = buildReceivers(spec, names, samplers)
  const safety = buildSafety(spec, sections.zoneSection, carriers, names, samplers)
  const rejects = buildRejects(spec, carriers, names)
  const hasCrews = spec.repairCrews !== null && spec.repairCrews < sources
  const zoneClocks = operating('zone', zones)
  const breaks = buildBreaks(spec)
  const samplerTable = new SamplerTable(samplers.list)
  const isOpen = spec.paths.some((path) => path.from === STORE || path.to === STORE)
  const safetySlot = sources + 1
  const resetSlot = safetySlot + (safety.safetyStations.length > 0 ? carriers : 0)
  const arrivalSlot = resetSlot + (safety.safetyStations.length > 0 ? 3 * carriers : 0)
  const storeSlot = arrivalSlot + paths + zones + stations + zones
  const operatorSlot = storeSlot + (isOpen ? carriers : 0)
  const supplySlot = operatorSlot + operators.operatorStart.length
  const arrives = supplies.supplies.some((supply) => !supply.always)
  const receiverSlot = supplySlot + (arrives ? supplies.supplies.length : 0)
  const receives = spec.stations.some(({ receiver }) => receiver !== null)
  const slots = receiverSlot + (receives ? stations : 0)
  const mixShares = spec.mix.kind === 'random' || spec.mix.kind === 'levelled' ? spec.mix.shares : []

  const line: Omit<Line, 'collector'> = {
    spec,
    zones,
    carriers,
    stations,
    tasks: spec.tasks.length,
    variants: spec.variants.length,
    sources,
    operators: operators.operatorStart.length,
    now: 0,
    queue: new TimerQueue(slots, backwards),
    breakSlot: sources,
    arrivalSlot,
    clearSlot: arrivalSlot + paths,
    workSlot: arrivalSlot + paths + zones,
    changeSlot: arrivalSlot + paths + zones + stations,
    storeSlot,
    resetSlot,
    operatorSlot,
    left: new Float64Array(slots),
    isHeldBack: new Uint8Array(slots),
    due: new Int32Array(slots),
    events: 0,
    streams: new StreamTable('unset', 0, names.list),
    samplers: samplerTable,
    samplerUses: Uint8Array.from(samplers.list, (_, k) => {
      const uses = samplerTable.uses(k)
      return uses === 'nothing' ? USES_NOTHING : uses === 'uniform' ? USES_UNIFORM : USES_INDEX
    }),
    drawn: new Float64Array(1),
    streamUses: new Int32Array(names.list.length),
    ...graph,
    zoneStarts: new Int32Array(places),
    zoneWay: new Int32Array(places),
    zoneLastIn: new Int32Array(places),
    startPath: new Int32Array(places),
    storeItems: new Int32Array(carriers),
    storeFirst: 0,
    storeCount: 0,
    zoneState: new Uint8Array(places),
    zoneCarrier: new Int32Array(places),
    zoneClaimant: new Int32Array(places),
    zoneHeld: new Int32Array(places),
    zoneStation,
    zonePosition: new Uint8Array(places),
    zoneChange: new Uint8Array(places),
    exitClear: Uint8Array.from({ length: places }, (_, z) => (spec.zones[z]?.transfer?.enterOnlyIfExitClear === true ? 1 : 0)),
    leavingPath: new Int32Array(places),
    zoneClearing: new Uint8Array(places),
    clearAt: new Float64Array(places),
    pathCarrier: new Int32Array(paths),
    clearIsPlain: plainClears(spec, graph),
    pathHeld: new Uint8Array(paths),
    pathLooks: new Uint8Array(paths),
    ...distinctPaces(times),
    moveSampler,
    clearSampler,
    moveStream,
    clearStream,
    carrierPhase: new Uint8Array(carriers),
    carrierZone: new Int32Array(carriers),
    carrierPath: new Int32Array(carriers),
    carrierSince: new Float64Array(carriers),
    carrierSerial: new Int32Array(carriers),
    carrierVariant: new Int32Array(carriers),
    carrierLoaded: new Float64Array(carriers),
    taskDone: new Uint8Array(carriers * spec.tasks.length),
    stationZone: Int32Array.from(spec.stations, (station) => station.zone),
    stationDuty: new Uint8Array(stations),
    stationHeld: new Int32Array(stations),
    stationServed: new Uint8Array(stations),
    stationBreaks: Uint8Array.from(spec.stations, (station) => (station.worksInBreaks ? 0 : 1)),
    ...duties,
    releaseSampler,
    releaseStream,
    nextSerial: 0,
    productsMax: spec.mix.kind === 'list' ? spec.mix.sequence.length : Number.POSITIVE_INFINITY,
    mixStream,
    mixSequence: spec.mix.kind === 'pattern' || spec.mix.kind === 'list' ? Int32Array.from(spec.mix.sequence) : new Int32Array(0),
    mixShares: Float64Array.from(mixShares),
    mixCumulative: cumulativeShares(mixShares),
    mixGiven: new Float64Array(spec.variants.length),
    mixShareSum: mixShares.reduce((sum, share) => sum + share, 0),
    taskStream,
    taskUniforms: new Float64Array(64 * taskStream.length),
    taskRoom: 64,
    oldestSerial: 0,
    taskDrawn: new Int32Array(taskStream.length),
    taskAhead: drawnAhead(spec, duties, samplerTable, taskStream.length),
    sourceDown: new Uint8Array(sources),
    sourceCalendar: Uint8Array.from(spec.breakdowns, (source) => (source.clock === 'calendar' ? 1 : 0)),
    failures: { sourceFailure, sourceRepair, failureStream, repairStream },
    sourceLeft: new Float64Array(sources),
    sourceRuns: new Uint8Array(sources),
    stationClocks: operating('station', stations),
    zoneClocks,
    transferClocks: operating('transfer', zones),
    followsZones: zoneClocks.items.length > 0 || sectionClocks.items.length > 0,
    zoneOperates: new Int32Array(places),
    operatesIn: new Uint8Array(paths),
    operatesOut: new Uint8Array(paths),
    operatesChange: new Uint8Array(zones),
    hasCrews,
    hasSafety: safety.safetyStations.length > 0,
    hasCalls: operators.operatorStart.length > 0 || arrives || receives || sharesLastProducts(spec),
    hasRejects: spec.inspections.length + spec.rework.length > 0,
    manualStation: Int32Array.from(spec.paths, ({ manual }) => manual?.station ?? NONE),
    carrierRejected: new Uint8Array(carriers),
    stationAccepts: Uint8Array.from(spec.stations, ({ accepts }) =>
      accepts === 'good' ? ACCEPTS_GOOD : accepts === 'rejected' ? ACCEPTS_REJECTED : ACCEPTS_ALL,
    ),
    sections: { ...sections, sectionClocks },
    crew: makeCrew(spec),
    safety: { ...safety, safetySlot },
    calls: makeCalls(spec, operators.coverage),
    staff: operators,
    rejects,
    goods: { ...supplies, ...receivers, productsAside: 0, supplySlot, receiverSlot },
    breaksNow: 0,
    ...breaks,
    breakNext: 0,
    workList: makeWorkList(stations),
    moveList: makeWorkList(places),
    moveSince: new Float64Array(graph.isLoop ? places : 0),
    moveAt: new Int32Array(graph.isLoop ? places : 0),
    changeList: makeWorkList(zones),
    lookList: makeWorkList(carriers),
    activity: 0,
    trace: null,
  }
  const whole = line as Line & { collector: Collector }
  whole.collector = new Collector(whole)
  return whole
}

/** Each end of a path is a zone or the store, and a closed loop has a hole. */
function checkPaths(spec: LineSpec): void {
  const zones = spec.zones.length
  const isPlace = (end: number): boolean => end === STORE || (Number.isInteger(end) && end >= 0 && end < zones)
  spec.paths.forEach(({ from, to, takes }, p) => {
    if (!isPlace(from) || !isPlace(to)) throw new RangeError(`path ${p} leads from ${from} to ${to}, but the zones are 0 to ${zones - 1}`)
    if (from === to) throw new RangeError(`path ${p} leads from a place to itself`)
    if (takes.forStation !== null && spec.stations[takes.forStation] === undefined) {
      throw new RangeError(`path ${p} takes carriers for station ${takes.forStation}, which there is not`)
    }
  })
  if (isPlainLoop(spec) && spec.carriers.count >= zones) {
    throw new RangeError(`${spec.carriers.count} carriers in ${zones} zones cannot move: there must be fewer carriers than zones`)
  }
}

/** Whether several load stations take from a list that ends: the last product is set aside for one of them before any work starts. */
const sharesLastProducts = ({ mix, stations }: LineSpec): boolean =>
  mix.kind === 'list' && stations.filter(({ load }) => load !== null).length > 1

function needsTime(seconds: number, what: string): void {
  if (Number.isNaN(seconds)) throw new RangeError(`${what} is neither given nor can it be derived from a drive`)
}
