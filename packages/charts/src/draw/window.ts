/** What all charts share: the words of a window, of carriers, and round steps. */
import type { WindowWords } from './figure.ts'

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
