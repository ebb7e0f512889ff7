/** A line whose stops come more or less often, or last otherwise. */
import { completeLine, type GivenLine, type LineSpec } from '@loopwright/line'
import { scaledTimes } from '@loopwright/stats'

/** How the times of a breakdown source change; each a factor > 0, 1 for none. */
export interface StopFactors {
  /** on the time between */
  readonly between: number
  readonly repair: number
}

/**
 * The same line with other times between stops and other repairs.
 *
 * @param factors  by the name of the breakdown source
 * @example otherStops(line, new Map()) === line // => true
 */
export function otherStops(given: GivenLine, factors: ReadonlyMap<string, StopFactors>): LineSpec {
  const line = completeLine(given)
  if (factors.size === 0) return line
  const scaled = (times: LineSpec['breakdowns'][number]['repairSeconds'], by: number): typeof times =>
    by === 1 ? times : scaledTimes(times, by)
  const breakdowns = line.breakdowns.map((source) => {
    const own = factors.get(source.name)
    if (own === undefined) return source
    return {
      ...source,
      timeToFailureSeconds: scaled(source.timeToFailureSeconds, own.between),
      repairSeconds: scaled(source.repairSeconds, own.repair),
    }
  })
  return { ...line, breakdowns }
}
