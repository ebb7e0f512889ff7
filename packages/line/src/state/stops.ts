/** Stops: what is down, whom it holds, and the clocks that run. (MODEL.md §7) */
import type { PartList, WorkList } from './lists.ts'

/** Zone columns have a place for the store too; source columns have the length sources. */
export interface Stops {
  /** stops that hold the zone */
  readonly zoneHeld: Int32Array
  /** stops and breaks that hold the station */
  readonly stationHeld: Int32Array
  /** 1: a stop holds one of its ends */
  readonly pathHeld: Uint8Array
  readonly sourceDown: Uint8Array
  readonly sourceCalendar: Uint8Array
  /** operating clock: seconds left to the failure at the instant up to which its part operates, as far as is known; below 0 where it runs out before */
  readonly sourceLeft: Float64Array
  /** 1: it runs out before, and has a timer */
  readonly sourceTimed: Uint8Array
  /** sources with an operating clock, by part: stations, zones, transfers, sections */
  readonly stationClocks: PartList
  readonly zoneClocks: PartList
  readonly transferClocks: PartList
  /** seconds; by part: the instant up to which it operates, as far as is known; not later than now where it does not. Of zones it is followed only where somebody asks. */
  readonly stationUntil: Float64Array
  readonly zoneUntil: Float64Array
  readonly transferUntil: Float64Array
  /** the instant that is handed over to be the next of them */
  readonly knownEnd: Float64Array
  /** zones in which what is under way has been held, or goes on, by the stop that begins or ends now */
  readonly zonesHeld: WorkList
  readonly stationBreaks: Uint8Array
  /** breaks under way */
  breaksNow: number
  readonly breakTimes: Float64Array
  /** +1 begins, −1 ends */
  readonly breakSteps: Int8Array
  breakNext: number
}

/** Samplers and streams of the sources: seconds to the next failure, and of its repair; length sources. */
export interface Failures {
  readonly sourceFailure: Int32Array
  readonly sourceRepair: Int32Array
  readonly failureStream: Int32Array
  readonly repairStream: Int32Array
}

/** Repair crews (crew.ts); kept only where they may be short. */
export interface Crew {
  readonly crews: number
  crewsBusy: number
  /** true: a crew may be given out */
  crewDue: boolean
  readonly sourceWaits: Uint8Array
  readonly failedAt: Float64Array
}

/** Safety stops (safety.ts). */
export interface Safety {
  /** by path: station that watches its moves; NONE */
  readonly pathSafety: Int32Array
  /** stations with a safety stop, ascending; and where each stands in that list, by station */
  readonly safetyStations: Int32Array
  readonly safetyOf: Int32Array
  readonly safetyProbability: Float64Array
  readonly safetyStream: Int32Array
  readonly resetSampler: Int32Array
  readonly resetStream: Int32Array
  /** by carrier: station that watches its move */
  readonly watchStation: Int32Array
  /** by slot of a reset: the station */
  readonly resetStation: Int32Array
  /** stops under way, by place in `safetyStations` */
  readonly safetyActive: Int32Array
}

/** Zones whose drives stop together (sections.ts). */
export interface Sections {
  readonly sectionClocks: PartList
  /** seconds; by section: the instant up to which it operates, as far as is known */
  readonly sectionUntil: Float64Array
  /** sections of `zonesHeld` */
  readonly sectionsHeld: WorkList
  /** section of a zone; NONE */
  readonly zoneSection: Int32Array
  readonly sectionZones: PartList
}
