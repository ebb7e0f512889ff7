/** What all specs share: as wide as their container, no colour, no font, one named source. */
import type { TopLevelSpec } from 'vega-lite'
import type { ChartRow, WindowWords } from './figure.ts'

/** One layer of a chart. */
export type Layer = Extract<TopLevelSpec, { layer: unknown }>['layer'][number]

export interface Frame {
  /** the text alternative; a reader of screens says it */
  readonly description: string
  /** pixels */
  readonly height: number
  /** each layer has a colour scale of its own. Default: false */
  readonly ownColours?: boolean
  /** the source `table` */
  readonly rows: readonly ChartRow[]
  readonly layer: readonly Layer[]
}

/**
 * A layered spec as wide as its container.
 *
 * @example frame({ description: 'a chart', height: 100, rows: [], layer: [] }).width // => 'container'
 */
export function frame({ description, height, ownColours = false, rows, layer }: Frame): TopLevelSpec {
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    description,
    width: 'container',
    height,
    autosize: { type: 'fit-x', contains: 'padding' },
    padding: { left: 2, top: 4, right: 4, bottom: 2 },
    data: { name: 'table', values: rows.map((each) => ({ ...each })) },
    layer: [...layer],
    ...(ownColours ? { resolve: { scale: { color: 'independent' }, legend: { color: 'independent' } } } : {}),
  }
}

/** The words of a window with every field filled. */
export interface WindowOf {
  readonly per: string
  readonly windowSeconds: number
  readonly netSeconds: number
  readonly plan: number | null
}

/**
 * Fills what the caller left out.
 *
 * @throws RangeError   if the window is not longer than 0 s
 * @example windowOf({ windowSeconds: 3600 }).per // => 'window'
 */
export function windowOf({ per = 'window', windowSeconds, netSeconds = windowSeconds, plan = null }: WindowWords): WindowOf {
  if (!(windowSeconds > 0) || !(netSeconds > 0))
    throw new RangeError(`a window of ${windowSeconds} s, ${netSeconds} s net, is not a window`)
  return { per, windowSeconds, netSeconds, plan }
}

/**
 * "1 carrier", "12 carriers".
 *
 * @example carriersText(1) // => '1 carrier'
 */
export function carriersText(count: number): string {
  return `${count} ${count === 1 ? 'carrier' : 'carriers'}`
}

/**
 * A step of 1, 2 or 5 times a power of ten that cuts `span` into at most `pieces`.
 *
 * @param span      > 0
 * @param pieces    ≥ 1
 * @example niceStep(170, 6) // => 50
 */
export function niceStep(span: number, pieces: number): number {
  const rough = span / pieces
  const power = 10 ** Math.floor(Math.log10(rough))
  return power * ([1, 2, 5, 10].find((factor) => factor * power >= rough * (1 - 1e-9)) ?? 10)
}
