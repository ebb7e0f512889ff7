/** What a screening is made of: figures of the line and of the workplace; SI throughout. */
import type { Permitted } from './finding.ts'

/** All figures that were given; what is not given is not checked. */
export interface ScreeningInputs extends Permitted {
  /** limits that the user has read in an own copy of a standard */
  readonly ownCopy: readonly OwnLimit[]
  /** carrier with its heaviest product, kilograms; null: not known */
  readonly mass: number | null
  readonly push: PushInputs | null
  readonly heights: readonly WorkHeight[]
  readonly gaps: readonly CrushGap[]
  readonly devices: readonly ProtectiveDevice[]
  /** people work at the line, or only pass it; null: not known */
  readonly people: 'working' | 'passing' | null
  readonly rollers: RollerInputs | null
  readonly drive: DriveInputs | null
  readonly load: LoadInputs | null
  readonly zone: ZoneInputs | null
  readonly curve: CurveInputs | null
  /** of the drives; null: not known */
  readonly volts: number | null
  readonly lifts: readonly { readonly place: string; readonly mass: number }[]
  readonly walks: readonly MeasuredWalk[]
}

/** Limits that are asked for and never told from memory. */
export const OWN_LIMITS = ['startForce', 'keepForce', 'actionsPerMinute', 'speed', 'gap', 'distance', 'walk'] as const
/** One of OWN_LIMITS. */
export type OwnLimitName = (typeof OWN_LIMITS)[number]

/** A limit as the user's own copy has it. */
export interface OwnLimit {
  readonly limit: OwnLimitName
  /** newtons, actions a minute, metres per second, metres (of `walk`: a person in a shift) */
  readonly value: number
  /** standard, edition and table */
  readonly source: string
}

/** A carrier pushed by hand. */
export interface PushInputs {
  /** coefficient while it rolls; level rollers at least 0.02, an uneven floor up to 0.10 */
  readonly rolling: number
  /** coefficient to start it */
  readonly starting: number
  /** that it is brought to, metres per second, and how long that takes, seconds */
  readonly speed: number
  readonly startSeconds: number
  /** metres; null: not known */
  readonly distance: number | null
  /** conditions under which the guidance figures hold; null: not said */
  readonly handsKnuckleToShoulder: boolean | null
  readonly evenFloor: boolean | null
  readonly noTrapping: boolean | null
  /** at one station, for each unit; null: told by the simulation, if at all */
  readonly pushesPerUnit: number | null
}

/** A way that people walk for each unit. */
export interface MeasuredWalk {
  /** name of a task or of a station, as the scenario has it */
  readonly of: string
  /** there and back, each unit */
  readonly metres: number
  /** how it was measured, in words */
  readonly measured: string
}

/** How high the hands are. */
export interface WorkHeight {
  readonly place: string
  readonly height: number
  readonly work: 'precision' | 'light' | 'heavy'
}

/** A gap between two parts that move towards each other, or between one that moves and one that stands. */
export interface CrushGap {
  readonly place: string
  readonly width: number
  /** what may get in */
  readonly part: BodyPart
}

/** Parts of the body for which least gaps are published. */
export type BodyPart = 'body' | 'head' | 'leg' | 'foot' | 'toes' | 'arm' | 'hand' | 'finger'

/** A light curtain or a scanner before a hazard. */
export interface ProtectiveDevice {
  readonly place: string
  readonly kind: 'curtain' | 'scanner'
  /** from the device's signal to standstill, all parts together */
  readonly stopSeconds: number
  /** what it still sees, metres; of a curtain */
  readonly resolution: number | null
  /** of the field over the floor, metres; of a scanner */
  readonly height: number | null
  /** from the hazard, metres */
  readonly distance: number
}

/** Rollers of the conveyor. */
export interface RollerInputs {
  /** from axis to axis */
  readonly pitch: number
  readonly diameter: number | null
  /** kilograms that one carries; null: not known */
  readonly rating: number | null
  /** a bottom that sags asks for one roller more */
  readonly soft: boolean
  /** widest step between two sections of the bed: gap and height; null: not known */
  readonly bedGap: number | null
  readonly bedStep: number | null
  /** between the guides; null: not known */
  readonly width: number | null
}

/** Drive of one zone. */
export interface DriveInputs {
  /** driven rollers in a zone */
  readonly rollers: number
  /** newtons that one idler takes */
  readonly idlerForce: number
  readonly efficiency: number
  /** newtons, watts and kilograms of the nameplate; null: not known */
  readonly force: number | null
  readonly power: number | null
  readonly ratedMass: number | null
  /** amperes of one drive that starts, of the supply at its peak, and how many start together; null: not known */
  readonly startCurrent: number | null
  readonly peakCurrent: number | null
  readonly startTogether: number | null
}

/** How the load stands on the carrier, and the carrier on the rollers. */
export interface LoadInputs {
  /** shorter side of what it stands on, metres */
  readonly base: number
  /** of the centre of gravity over it, metres */
  readonly centreHeight: number
  /** static friction of carrier and rollers */
  readonly friction: number
  /** share of the mass that rests on driven rollers, 0 … 1 */
  readonly drivenShare: number
}

/** Room that a carrier needs in its zone beside its own length. */
export interface ZoneInputs {
  readonly noseMargin: number
  readonly rearMargin: number
}

/** A curve that carriers go through. */
export interface CurveInputs {
  readonly innerRadius: number
  /** between its guides */
  readonly width: number
}
