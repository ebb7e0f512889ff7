/** One limit of a line: something that every unit of output needs, and how much of it there is in a window. */
import type { LineSpec } from '../spec.ts'
import type { EstimateReason } from './exactness.ts'
import { windowSecondsOf } from './workingSeconds.ts'

/** The kinds of limits, in the order in which they are told. */
export const LIMIT_KINDS = ['station', 'operator', 'arrivals', 'list', 'receiver', 'repair crew', 'carriers', 'space'] as const
/** One of LIMIT_KINDS. */
export type LimitKind = (typeof LIMIT_KINDS)[number]

/** beside those of the law */
const LIMIT_REASONS = [
  'stops that come by the clock',
  'stops of a section',
  'stops of equal times',
  'walking from station to station in turn',
  'products that are in the line at the start',
  'time that repairs by the clock take',
] as const
/** Why a figure is an estimate. */
export type LimitReason = EstimateReason | (typeof LIMIT_REASONS)[number]

/** Mean seconds per unit; they sum to `secondsPerUnit` but for carriers and space, which are not taken apart. */
export interface LimitParts {
  readonly workSeconds: number
  readonly releaseSeconds: number
  readonly walkingSeconds: number
  /** pushing and pulling */
  readonly handlingSeconds: number
  /** moves in and out with their transfer changes */
  readonly exchangeSeconds: number
  /** held by stops */
  readonly stoppedSeconds: number
}

/** Something that every unit of output needs, and how much of it there is in a window, by mean times. */
export interface Limit {
  readonly kind: LimitKind
  /** as people call it; several joined by " and " */
  readonly name: string
  /** indices; empty where it is about none */
  readonly stations: readonly number[]
  /** indices */
  readonly operators: readonly number[]
  /** of all of them together, per unit of output, > 0 */
  readonly secondsPerUnit: number
  /** of all of them together, in the window */
  readonly availableSeconds: number
  /** what it lets through in the window, on average */
  readonly unitsPerWindow: number
  /** the same per second of the window */
  readonly unitsPerSecond: number
  /** no line of this kind makes more in the long run; else `unitsPerWindow` is an estimate */
  readonly atMost: boolean
  /** what is proven where the figure is an estimate, ≥ `unitsPerWindow`; null: nothing */
  readonly atMostPerWindow: number | null
  /** why it is an estimate; empty where it is none */
  readonly reasons: readonly LimitReason[]
  readonly parts: LimitParts
}

const NO_PARTS: LimitParts = {
  workSeconds: 0,
  releaseSeconds: 0,
  walkingSeconds: 0,
  handlingSeconds: 0,
  exchangeSeconds: 0,
  stoppedSeconds: 0,
}

export interface LimitDraft {
  readonly kind: LimitKind
  readonly name: string
  readonly stations?: readonly number[]
  readonly operators?: readonly number[]
  readonly secondsPerUnit: number
  readonly availableSeconds: number
  /** units per window that are proven; null: none are */
  readonly provenPerWindow: number | null
  readonly reasons: readonly LimitReason[]
  readonly parts?: Partial<LimitParts>
}

/** The whole record; null where nothing is needed, so that nothing is limited. A figure above what is proven gives way to it. */
export function limitOf(spec: Pick<LineSpec, 'window'>, draft: LimitDraft): Limit | null {
  const { secondsPerUnit, availableSeconds, provenPerWindow, reasons, parts = {}, stations = [], operators = [], kind, name } = draft
  if (!(secondsPerUnit > 0) || !Number.isFinite(secondsPerUnit)) return null
  const windowSeconds = windowSecondsOf(spec)
  const figure = availableSeconds / secondsPerUnit
  const proven = provenPerWindow === null || !Number.isFinite(provenPerWindow) ? null : provenPerWindow
  const unitsPerWindow = proven === null ? figure : Math.min(figure, proven)
  const atMost = proven !== null && unitsPerWindow >= proven * (1 - 1e-9)
  return {
    kind,
    name,
    stations,
    operators,
    secondsPerUnit,
    availableSeconds,
    unitsPerWindow,
    unitsPerSecond: unitsPerWindow / windowSeconds,
    atMost,
    atMostPerWindow: atMost ? unitsPerWindow : proven,
    reasons: atMost ? [] : [...new Set(reasons)],
    parts: { ...NO_PARTS, ...parts },
  }
}
