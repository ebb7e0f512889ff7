/** Stops of places that nobody has logged enough of: placeholders until there are plant data. All of them are common practice, no source. */

/** A usual stop. */
export interface UsualStop {
  /** seconds between two stops, of the clock that runs */
  readonly between: number
  /** mean, seconds */
  readonly repair: number
  /** of the repair */
  readonly cv: number
  /** what it is */
  readonly says: string
}

/** σ of the logarithm of a repair 0.6 */
const CV = 0.6583

/**
 * What stands in, by what the place is called.
 *
 * @example usualStop('tightness test', false).between // => 14400
 */
export function usualStop(place: string, short: boolean): UsualStop {
  if (short) return { between: 3600, repair: 25, cv: 1, says: 'a short stop of 25 s every hour' }
  if (/test|leak|check/i.test(place)) return { between: 4 * 3600, repair: 300, cv: CV, says: 'a tester: 5 min every 4 h' }
  if (/transfer|lift|corner|turn/i.test(place)) return { between: 10 * 3600, repair: 90, cv: CV, says: 'a transfer: 1.5 min every 10 h' }
  if (/^line$|power|air|network/i.test(place))
    return { between: 200 * 3600, repair: 1200, cv: CV, says: 'supply of the whole line: 20 min every 200 h' }
  return { between: 10 * 3600, repair: 300, cv: CV, says: 'a tool: 5 min every 10 h' }
}
