import type { Figure } from '../draw/figure.ts'
import { zoneOccupancy } from '../times/zoneOccupancy.ts'
import { baseLineCount, baseLinePlan, SHIFT } from './baseLine.ts'

export function zoneOccupancyExample(): Figure {
  const places = baseLinePlan(10).map(({ station, transfer }) => ({ station: station?.title ?? null, transfer }))
  return zoneOccupancy(baseLineCount(10), { ...SHIFT, places })
}
