/**
 * A draft of a line: what is known of it while it is read, for checks that a file and code have in common. A value that is wrong where it was written is undefined: it has its
 * finding, and nothing more is said about it. Every LineSpec is one.
 */
import type { CarriersSpec, PathSpec, SectionSpec, ZoneSpec } from '../spec.ts'

type Known<T> = { readonly [K in keyof T]: T[K] | undefined }

export type DraftZone = Pick<ZoneSpec, 'name' | 'release'> & Known<Pick<ZoneSpec, 'lengthMetres' | 'sensorBeforeStopMetres' | 'transfer'>>

export type DraftPath = Pick<PathSpec, 'from' | 'to' | 'across' | 'fromPosition' | 'toPosition'> &
  Known<Pick<PathSpec, 'distanceMetres' | 'speedMetresPerSecond' | 'accelerationMetresPerSecondSquared' | 'moveSeconds' | 'clearSeconds'>>

export type DraftCarriers = Pick<CarriersSpec, 'count'> & Known<Pick<CarriersSpec, 'lengthMetres' | 'widthMetres' | 'start'>>

export interface DraftStation {
  readonly name: string
  /** null where it is not known */
  readonly zone: number | null
  /** null: it has no such duty */
  readonly load: unknown
  readonly unload: unknown
  /** null: it has none */
  readonly safetyStop: unknown
  readonly operatorsNeeded: number | undefined
}

/** What is known of a line while it is read: parts that were wrong are not there. */
export interface DraftLine {
  readonly zones: readonly DraftZone[]
  readonly paths: readonly DraftPath[]
  /** null where they are not known */
  readonly carriers: DraftCarriers | null
  readonly stations: readonly DraftStation[]
  readonly sections: readonly SectionSpec[]
  readonly operators: readonly { readonly stations: readonly number[] }[]
  readonly reactionSeconds: number
}

/**
 * Path k leads from zone k to the next one, all round.
 *
 * @example isRing(line) // => true
 */
export const isRing = ({
  zones,
  paths,
}: {
  readonly zones: readonly unknown[]
  readonly paths: readonly { readonly from: number; readonly to: number }[]
}): boolean => paths.length === zones.length && paths.every(({ from, to }, k) => from === k && to === (k + 1) % zones.length)
