/** Streams of random numbers by name, and durations drawn from them. (MODEL.md §9) */

import type { Distribution } from '@loopwright/stats'
import seedrandom from 'seedrandom'
import { onGrid } from './grid.ts'
import { inverse } from './inverse.ts'

export interface Draws {
  /** uniform number k of the stream */
  uniform(name: string, k: number): number
  /** the next uniform of the stream, in order of use */
  uniformInOrder(name: string): number
  /** draw that belongs to product `serial`: draw k of the stream is for product k */
  forProduct(name: string, d: Distribution, serial: number): number
  /** draw in order of use; a constant is no use */
  inOrder(name: string, d: Distribution): number
}

export function openDraws(seed: string, replication: number): Draws {
  const generators = new Map<string, () => number>()
  const made = new Map<string, number[]>()
  const uses = new Map<string, number>()

  function uniform(name: string, k: number): number {
    if (!generators.has(name)) {
      // "seeded by the text seed/replication/name and by nothing else"
      const alea = seedrandom.alea(`${seed}/${replication}/${name}`)
      generators.set(name, () => alea.double())
      made.set(name, [])
    }
    const numbers = made.get(name)!
    while (numbers.length <= k) {
      const u = generators.get(name)!()
      numbers.push(u === 0 ? 2 ** -54 : u)
    }
    return numbers[k]!
  }

  function draw(name: string, d: Distribution, k: number): number {
    if (d.kind === 'constant') return onGrid(d.value)
    if (d.kind === 'replay') return onGrid(d.values[k % d.values.length]!)
    return onGrid(inverse(d, uniform(name, k)))
  }

  function use(name: string): number {
    const k = uses.get(name) ?? 0
    uses.set(name, k + 1)
    return k
  }

  return {
    uniform,
    uniformInOrder: (name) => uniform(name, use(name)),
    forProduct: draw,
    inOrder: (name, d) => (d.kind === 'constant' ? onGrid(d.value) : draw(name, d, use(name))),
  }
}
