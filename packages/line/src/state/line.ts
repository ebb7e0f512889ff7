/**
 * The line while it runs, as columns by index: zones, paths, carriers, stations, breakdown sources, one object by noun. `build` makes it from a LineSpec and fills
 * what never changes; the files named after a noun (`zone.ts`, `move.ts`, `station.ts`, `stop.ts`) change the rest.
 */
import type { TimerQueue } from '@loopwright/kernel'
import type { LineSpec } from '../spec.ts'
import type { Trace } from '../telling/trace.ts'
import type { Draws } from './draws.ts'
import type { Goods, Rejects } from './goods.ts'
import type { Graph } from './graph.ts'
import type { Moves } from './moves.ts'
import type { Slots } from './slots.ts'
import type { Staff } from './staff.ts'
import type { Crew, Failures, Safety, Sections, Stops } from './stops.ts'
import type { Collected } from './collected.ts'
import type { Transfers } from './transfers.ts'
import type { Calls, Work } from './work.ts'

export interface Line {
  readonly spec: LineSpec
  // Sizes
  readonly zones: number
  /** index of the store, one past the last zone: it has a place in the columns of the zones, is always free and never held */
  readonly store: number
  readonly paths: number
  readonly carriers: number
  readonly stations: number
  readonly tasks: number
  readonly variants: number
  readonly sources: number
  /** named ones first, then those of stations that push or pull */
  readonly operators: number

  // Clock
  /** seconds; the instant being handled */
  now: number
  readonly queue: TimerQueue
  readonly slots: Slots
  events: number
  /** moves, work, releases and changes under way, held ones too */
  activity: number

  // What every line has
  readonly graph: Graph
  readonly moves: Moves
  readonly transfers: Transfers
  readonly work: Work
  readonly goods: Goods
  readonly stops: Stops
  readonly draws: Draws

  // What only some lines have
  /** true: some station has operators that are kept, products arrive, or there is a receiver */
  readonly hasCalls: boolean
  readonly calls: Calls
  readonly staff: Staff
  /** true: there are inspections or tasks marked rework */
  readonly hasRejects: boolean
  readonly rejects: Rejects
  /** true: a zone or a section has an operating clock, so that operation of zones is followed */
  readonly followsZones: boolean
  readonly failures: Failures
  readonly sections: Sections
  readonly hasCrews: boolean
  readonly crew: Crew
  readonly hasSafety: boolean
  readonly safety: Safety

  // What is told of it
  readonly collector: Collected
  trace: Trace | null
}
