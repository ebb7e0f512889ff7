/** A clear without a timer whose instant has come, but which nobody has asked for yet. (MODEL.md §3) */
import { CLEAR_KNOWN, type Line } from '../instant/state.ts'

/** Whether the zone has been clear since `clearAt` and counts as vacating still. */
export function isClearOver({ zoneClearing, clearAt, now }: Pick<Line, 'zoneClearing' | 'clearAt' | 'now'>, zone: number): boolean {
  return zoneClearing[zone] === CLEAR_KNOWN && clearAt[zone]! <= now
}
