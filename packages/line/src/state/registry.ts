/** Indices for what the running line knows by number: streams by name, and samplers. */
import type { Distribution } from '@loopwright/stats'

/** Names get an index in the order in which they are first asked for. */
export class Names {
  readonly list: string[] = []
  private readonly index = new Map<string, number>()

  of(name: string): number {
    const known = this.index.get(name)
    if (known !== undefined) return known
    this.index.set(name, this.list.length)
    return this.list.push(name) - 1
  }
}

/** Distributions get an index as samplers. */
export class Samplers {
  readonly list: Distribution[] = []

  of(distribution: Distribution): number {
    return this.list.push(distribution) - 1
  }
}
