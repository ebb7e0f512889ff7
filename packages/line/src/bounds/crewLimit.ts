/** What repair crews let through: every unit brings its share of failures, and each wants a crew for its repair. (MODEL.md §7) */
import type { LineSpec } from '../spec.ts'
import { type Flows, unitUse } from './flows.ts'
import { type Limit, limitOf } from './limit.ts'
import { availability, stopShares } from './stopShares.ts'
import { windowSecondsOf } from './workingSeconds.ts'

/** Sources of stations on the operating clock; repairs by the clock take their share of the crews before. */
export function crewLimit(spec: LineSpec, flows: Flows): Limit | null {
  const crews = spec.repairCrews
  if (crews === null || crews >= spec.breakdowns.length) return null
  const perWork = spec.stations.map((_, station) => stopShares(spec, station).perWork)
  const least = unitUse(flows, { stay: (stay) => perWork[stay.station]! * stay.workSeconds })
  if (least.perUnit <= 0) return null
  const windowSeconds = windowSecondsOf(spec)
  const byClock = spec.breakdowns.filter(({ clock }) => clock === 'calendar').reduce((sum, source) => sum + 1 - availability(source), 0)
  return limitOf(spec, {
    kind: 'repair crew',
    name: crews === 1 ? 'the repair crew' : `${crews} repair crews`,
    stations: [...perWork.keys()].filter((station) => perWork[station]! > 0),
    secondsPerUnit: least.perUnit,
    availableSeconds: windowSeconds * Math.max(crews - byClock, 0.01 * crews),
    provenPerWindow: (windowSeconds * crews) / least.perUnit,
    reasons: byClock > 0 ? ['time that repairs by the clock take'] : [],
    parts: { stoppedSeconds: least.perUnit },
  })
}
