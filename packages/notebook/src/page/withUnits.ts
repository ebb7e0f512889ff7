const NO_BREAK = '\u00a0'

/** a figure, a blank and the sign of a unit */
const MEASURED = /(\d) (?=(?:ms|s|min|h|d|mm|cm|m|kg|N|kN|V|W|kW)(?![\p{L}\d]))/gu

/**
 * Prose in which no line ends between a figure and its unit.
 *
 * @example withUnits('2 s until it is let go').length // => 22
 */
export function withUnits(text: string): string {
  return text.replace(MEASURED, `$1${NO_BREAK}`)
}
