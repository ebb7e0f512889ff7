/** From a LineSpec to the columns that run: what never changes is worked out once, and all room is taken here. */
import { TimerQueue } from '@loopwright/kernel'
import { makeCalls } from '../work/calls.ts'
import { Collector } from '../telling/collect.ts'
import { makeCrew } from '../stops/crew.ts'
import { buildDraws, buildFailures, buildGoods, buildMoves, buildSlots, buildStops, buildTransfers, buildWork } from './columns.ts'
import { buildGraph, isPlainLoop } from './graph.ts'
import { buildOperators } from '../operators/operators.ts'
import { Names, Samplers } from '../state/registry.ts'
import { buildRejects } from '../goods/rejects.ts'
import { buildSafety } from '../stops/safety.ts'
import { buildSections } from './sections.ts'
import { type LineSpec, STORE } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { listByPart } from '../stops/stopLists.ts'

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
  const { graph, changes } = buildGraph(spec)
  const moves = buildMoves(spec, graph, changes.zoneChanges, names, samplers)
  const { work, taskStream } = buildWork(spec, names, samplers)
  const failures = buildFailures(spec, names, samplers)
  const mixStream = names.of('mix')
  // what is spread stands last: see buildTransfers
  const sections = { sectionClocks: listByPart(spec, 'section', spec.sections.length), ...buildSections(spec) }
  const staff = buildOperators(spec)
  const goods = buildGoods(spec, mixStream, names, samplers)
  const safety = buildSafety(spec, sections.zoneSection, spec.carriers.count, names, samplers)
  const rejects = buildRejects(spec, spec.carriers.count, names)
  const stops = buildStops(spec)
  const arrives = goods.supplies.some((supply) => !supply.always)
  const receives = spec.stations.some(({ receiver }) => receiver !== null)
  const operators = staff.operatorStart.length
  const { slots, length } = buildSlots(spec, { operators, supplies: arrives ? goods.supplies.length : 0, receives })
  const line: Omit<Line, 'collector'> = {
    spec,
    zones: spec.zones.length,
    store: spec.zones.length,
    paths: spec.paths.length,
    carriers: spec.carriers.count,
    stations: spec.stations.length,
    tasks: spec.tasks.length,
    variants: spec.variants.length,
    sources: spec.breakdowns.length,
    operators,
    // no whole number, so that V8 keeps a place for any: an object gets another shape when it finds out later
    now: Number.NaN,
    queue: new TimerQueue(length, backwards),
    slots,
    events: 0,
    activity: 0,
    graph,
    moves,
    transfers: buildTransfers(spec, changes),
    work,
    goods,
    stops,
    draws: buildDraws(spec, names, samplers, taskStream, work.entrySampler),
    hasCalls: operators > 0 || arrives || receives || sharesLastProducts(spec),
    calls: makeCalls(spec, staff.coverage),
    staff,
    hasRejects: spec.inspections.length + spec.rework.length > 0,
    rejects,
    followsZones: stops.zoneClocks.items.length > 0 || sections.sectionClocks.items.length > 0,
    failures,
    sections,
    hasCrews: spec.repairCrews !== null && spec.repairCrews < spec.breakdowns.length,
    crew: makeCrew(spec),
    hasSafety: safety.safetyStations.length > 0,
    safety,
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
