/** From the values of an axis to pixels. */
import { niceStep } from '../draw/window.ts'
import { formatNumber } from '../table/format.ts'
import type { At, Axis, Tick } from './drawing.ts'

export interface Scale {
  /** pixels from the left or upper edge of the picture */
  readonly of: (at: At) => number
  /** the same, no further than the ends of the axis */
  readonly within: (at: At) => number
  readonly fromPixels: number
  readonly toPixels: number
}

/** pixels from the ends that a value just outside still reaches by rounding */
const EDGE = 1e-9

/**
 * @param fromPixels  where the axis begins
 * @throws RangeError  if the axis has no length, or a tenfold one does not begin above 0
 */
export function scaleOf({ from, to, tenfold = false }: Axis, fromPixels: number, toPixels: number): Scale {
  if (!Number.isFinite(from) || !Number.isFinite(to) || from === to || (tenfold && Math.min(from, to) <= 0))
    throw new RangeError(`an axis from ${from} to ${to} cannot be drawn`)
  const steps = tenfold ? Math.log10 : (value: number) => value
  const share = (value: number): number => (steps(value) - steps(from)) / (steps(to) - steps(from))
  const of = (at: At): number => (at === 'from' ? fromPixels : at === 'to' ? toPixels : fromPixels + share(at) * (toPixels - fromPixels))
  const [low, high] = [Math.min(fromPixels, toPixels), Math.max(fromPixels, toPixels)]
  return { of, within: (at) => Math.max(low, Math.min(high, of(at))), fromPixels, toPixels }
}

/**
 * Round numbers along an axis.
 *
 * @param pieces  about so many steps
 * @example roundTicks({ from: 0, to: 100, title: '' }, 2).map(({ text }) => text) // => ['0', '50', '100']
 */
export function roundTicks({ from, to }: Axis, pieces: number): Tick[] {
  const [low, high] = [Math.min(from, to), Math.max(from, to)]
  const step = niceStep(high - low, pieces)
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + EDGE))
  const first = Math.ceil(low / step - EDGE)
  const last = Math.floor(high / step + EDGE)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => {
    const at = (first + index) * step
    return { at, text: formatNumber(at, decimals) }
  })
}
