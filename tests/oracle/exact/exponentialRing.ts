/**
 * A loop whose output is exactly known.
 *
 * Two exponential stations of mean 1 s in a ring of zones without move times, b zones between them on either way: a birth and death chain with L + 1 states of
 * equal chance, L = min(N, b + 2) − max(0, N − b − 2), so X(N) = L/(L + 1) products a second (own derivation, as in ring-two-stations.json; the open case:
 * G. Hunt, Sequential arrays of waiting lines, Operations Research 4 (1956), from memory).
 */
import type { LineSpec } from '@loopwright/line'
import { smallLoop } from '../../helpers/smallLoop.ts'

const exponential = { kind: 'exponential', mean: 1 } as const

/** Ring with `between` zones from either station to the other. */
export function exponentialRing(between: number, carriers: number, windowSeconds: number, warmup: number): LineSpec {
  const stations = [
    { at: 0, unload: true as const, load: true as const, work: exponential },
    { at: between + 1, work: exponential },
  ]
  return smallLoop({
    zones: 2 * between + 2,
    start: carriers,
    odd: true,
    move: 0,
    clear: 0,
    stations,
    warmup,
    until: warmup + windowSeconds,
  })
}

/** Products a second with N carriers. */
export function exponentialRingRate(between: number, carriers: number): number {
  const states = Math.min(carriers, between + 2) - Math.max(0, carriers - between - 2)
  return states / (states + 1)
}
