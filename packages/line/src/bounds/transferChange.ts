import { toGrid } from '@loopwright/kernel'
import type { LineSpec } from '../spec.ts'

/**
 * The two position changes that a carrier through this zone costs: to the position of its way out, and back to that of the way in.
 *
 * @returns  seconds on the clock grid; null: no transfer here, or both ways need the same position (MODEL.md §4)
 */
export function changeSeconds(spec: LineSpec, zone: number): { out: number; back: number } | null {
  const transfer = spec.zones[zone]!.transfer
  if (transfer === null) return null
  const wayIn = spec.paths.find((path) => path.to === zone)!.toPosition
  const wayOut = spec.paths.find((path) => path.from === zone)!.fromPosition
  if (wayIn === wayOut) return null
  const lift = toGrid(transfer.liftSeconds)
  const lower = toGrid(transfer.lowerSeconds)
  return wayOut === 'high' ? { out: lift, back: lower } : { out: lower, back: lift }
}
