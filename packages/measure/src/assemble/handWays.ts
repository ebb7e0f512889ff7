/** Ways by hand and corners as a scenario’s text lists them: times of their moves may be measured. */
import { createReport, type Located, readSource } from '@loopwright/scenario/text'

/** A way by hand in the list `paths` of a scenario. */
export interface HandWay {
  readonly kind: 'push' | 'pull'
  /** station whose operator does it */
  readonly station: string
  /** '' where the way does not say it */
  readonly from: string
  readonly to: string
  /** of its move time */
  readonly path: string
}

/**
 * The ways by hand of a text.
 *
 * @param text  of a scenario that reads
 * @example handWays('paths: [{ from: Z06, to: Z07, push: S2, move: 6 s }]').map(({ path }) => path) // => ['paths[0].move']
 */
export function handWays(text: string): HandWay[] {
  const list = root(text)?.entries.get('paths')?.value
  const ways = list?.kind === 'list' ? list.items : []
  return ways.flatMap((way, index): HandWay[] => {
    const word = (key: string): string => said(way.entries.get(key)?.value)
    return (['push', 'pull'] as const)
      .filter((kind) => word(kind) !== '')
      .map((kind) => ({ kind, station: word(kind), from: word('from'), to: word('to'), path: `paths[${index}].move` }))
  })
}

const said = (at: Located | undefined): string => (at?.kind === 'text' ? String(at.value) : '')

const root = (text: string): Located | null => readSource(text, createReport(text))

/**
 * The times of transfers that all corners of a text share: one entry for all of them, which names zones.
 *
 * @param text  of a scenario that reads
 * @example corners('corners: { zones: [Z09], lift: 2 s, lower: 1.6 s }') // => ['lift', 'lower']
 */
export function corners(text: string): ('lift' | 'lower')[] {
  const at = root(text)?.entries.get('corners')?.value
  return at?.kind === 'map' ? (['lift', 'lower'] as const).filter((key) => at.entries.has(key)) : []
}
