/** What a line says of the things that it does not have: for lines written by hand, where only what is there is worth a word. */
import type { LineSpec, PathSpec, StationSpec, ZoneSpec } from '../spec.ts'

/** A zone with nothing special about it. */
export const PLAIN_ZONE: Pick<ZoneSpec, 'divert' | 'merge'> = { divert: 'first', merge: { kind: 'waiting' } }

/** A path with nothing special about it. */
export const PLAIN_PATH: Pick<PathSpec, 'takes' | 'manual'> = {
  takes: { variants: null, load: null, rejected: null, forStation: null },
  manual: null,
}

/** One operator of its own, products always there, a receiver always ready. */
export const PLAIN_STATION: Pick<StationSpec, 'operatorsNeeded' | 'worksInBreaks' | 'accepts' | 'supply' | 'receiver' | 'safetyStop'> = {
  operatorsNeeded: 1,
  worksInBreaks: false,
  accepts: 'good',
  supply: null,
  receiver: null,
  safetyStop: null,
}

/** No inspections, no rework, no named operators, no walks, no limit of repair crews; products always there. */
export const PLAIN_LINE: Pick<LineSpec, 'inspections' | 'rework' | 'operators' | 'walks' | 'supply' | 'repairCrews'> = {
  inspections: [],
  rework: [],
  operators: [],
  walks: [],
  supply: { name: 'supply', arrivals: { kind: 'always' }, queueLimit: null },
  repairCrews: null,
}

/**
 * The one section that holds the zones 0 … count − 1.
 *
 * @example wholeLine(3) // => [{ name: 'line', zones: [0, 1, 2] }]
 */
export function wholeLine(count: number): LineSpec['sections'] {
  return [{ name: 'line', zones: Array.from({ length: count }, (_, zone) => zone) }]
}
