/** What limits any line: stations, operators, arrivals, lists, receivers, repair crews, carriers and room, the slowest first. */
import { completeLine, type GivenLine } from '../builder/givenLine.ts'
import { carrierLimits } from './carrierLimits.ts'
import { crewLimit } from './crewLimit.ts'
import { flowsOf } from './flows.ts'
import { goodsLimits } from './goodsLimits.ts'
import { lawOrNull } from './law.ts'
import type { Limit } from './limit.ts'
import { operatorLimits } from './operatorLimits.ts'
import { stationLimits } from './stationLimits.ts'

/**
 * Everything that limits the output of a line, each by itself, from mean times alone; nothing is simulated. The first is the constraint.
 *
 * Waiting for each other comes on top: the line makes no more than the first says, and usually less. Where `atMost` is true no line of this kind makes
 * more in the long run; a single window may, by the products that lie in the line at its start, and by chance.
 *
 * @param given  any line: loop, open line, graph
 * @returns     by units per window, ascending; empty where nothing good is ever taken off, or there are too many ways to look at
 * @throws RangeError  if the line is one closed loop in which a lap takes no time
 * @see packages/line/README.md for the formulas and their sources
 * @example lineLimits(line).map(({ kind, name }) => `${kind} ${name}`)[0] // => 'station B Fit'
 */
export function lineLimits(given: GivenLine): readonly Limit[] {
  const spec = completeLine(given)
  const flows = flowsOf(spec)
  if (flows === null) return []
  const lineLaw = lawOrNull(spec)
  const crew = crewLimit(spec, flows)
  const all = [
    ...stationLimits(spec, flows, lineLaw),
    ...operatorLimits(spec, flows),
    ...goodsLimits(spec, flows),
    ...(crew === null ? [] : [crew]),
    ...carrierLimits(spec, flows, lineLaw),
  ]
  return all.filter((limit) => !all.some((other) => saysMore(other, limit))).sort((a, b) => a.unitsPerWindow - b.unitsPerWindow)
}

/** A group tells nothing new where one of its members alone is as slow. */
function saysMore(one: Limit, group: Limit): boolean {
  const members = group.kind === 'operator' ? 'operators' : 'stations'
  if (one === group || one.kind !== group.kind || group[members].length < 2 || one[members].length >= group[members].length) return false
  if (group.kind !== 'station' && group.kind !== 'operator' && group.kind !== 'receiver') return false
  return one[members].every((index) => group[members].includes(index)) && one.unitsPerWindow <= group.unitsPerWindow * (1 + 1e-9)
}
