import type { LineSpec } from '@loopwright/line'

/**
 * The same line with another number of carriers.
 *
 * @param carriers  count, a whole number, 1 … zones − 1
 * @throws RangeError  if carriers is out of that range, or the start names the zones of another number of carriers
 */
export function withCarriers(spec: LineSpec, carriers: number): LineSpec {
  const zones = spec.zones.length
  if (!Number.isInteger(carriers) || carriers < 1 || carriers >= zones) {
    throw new RangeError(`a loop of ${zones} zones takes 1 to ${zones - 1} carriers, not ${carriers}`)
  }
  const start = spec.carriers.start
  if (typeof start !== 'string' && start.length !== carriers) {
    throw new RangeError(
      `the start names a zone for each of ${start.length} carriers, which says nothing about ${carriers}: to try other numbers, let the start be a rule (spread or packed)`,
    )
  }
  return { ...spec, carriers: { ...spec.carriers, count: carriers } }
}
