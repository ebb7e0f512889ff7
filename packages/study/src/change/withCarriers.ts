import { completeLine, type GivenLine, isPlainLoop, type LineSpec } from '@loopwright/line'

/** Zones in which a carrier may wait. */
export const storageZones = ({ zones }: LineSpec): number => zones.filter(({ transfer }) => transfer?.enterOnlyIfExitClear !== true).length

/**
 * The same line with another number of carriers.
 *
 * @param carriers  count, a whole number from 1; as many as the start has places for, on one closed loop zones − 1 at most
 * @throws RangeError  if carriers is out of that range, or the start names the zones of another number of carriers
 * @example withCarriers(line, 4).carriers.count // => 4
 */
export function withCarriers(given: GivenLine, carriers: number): LineSpec {
  const spec = completeLine(given)
  const zones = spec.zones.length
  const { start } = spec.carriers
  const places = start === 'store' ? Number.POSITIVE_INFINITY : storageZones(spec)
  const [what, most] = isPlainLoop(spec) ? ['loop', Math.min(zones - 1, places)] : ['line', places]
  if (!Number.isInteger(carriers) || carriers < 1 || carriers > most) {
    const range = most === Number.POSITIVE_INFINITY ? '1 or more' : `1 to ${most}`
    throw new RangeError(`a ${what} of ${zones} zones takes ${range} carriers, not ${carriers}`)
  }
  if (typeof start !== 'string' && start.length !== carriers) {
    throw new RangeError(
      `the start names a zone for each of ${start.length} carriers, which says nothing about ${carriers}: to try other numbers, let the start be a rule (spread, packed or store)`,
    )
  }
  return { ...spec, carriers: { ...spec.carriers, count: carriers } }
}
