/** The draws of a stream outside the engine: the same as a run of that world takes, as far as they are asked for. (MODEL.md §9) */
import { type Distribution, SamplerTable, type Stream, stream } from '@loopwright/stats'

/** One world: a seed and a replication. Each stream is made once, whatever asks for it. */
export class World {
  readonly #seed: string
  readonly #replication: number
  readonly #streams = new Map<string, { readonly next: Stream; readonly drawn: number[] }>()

  constructor(seed: string, replication: number) {
    this.#seed = seed
    this.#replication = replication
  }

  /** Uniform k of the stream, from 0. */
  uniform(name: string, k: number): number {
    let known = this.#streams.get(name)
    if (known === undefined) {
      known = { next: stream(this.#seed, this.#replication, name), drawn: [] }
      this.#streams.set(name, known)
    }
    while (known.drawn.length <= k) known.drawn.push(known.next())
    return known.drawn[k]!
  }
}

/** A distribution that is drawn from, and whether chance reaches what it gives: a constant and a replay give the same in every world. */
export class Draws {
  readonly distribution: Distribution
  readonly random: boolean
  readonly #table: SamplerTable

  constructor(distribution: Distribution) {
    this.distribution = distribution
    this.#table = new SamplerTable([distribution])
    this.random = this.#table.uses(0) === 'uniform'
  }

  /** Use k of the stream. Not on the grid of the clock, so that its mean is that of the distribution. */
  at(world: World, stream: string, k: number): number {
    this.#table.draw(0, this.random ? world.uniform(stream, k) : 0, k)
    return this.#table.value[0]!
  }
}
