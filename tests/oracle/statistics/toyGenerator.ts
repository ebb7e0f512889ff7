/**
 * The generator that made the pseudo-data of these vectors: x ← 16807·x mod 2³¹ − 1, exact in doubles. Park & Miller, Random number generators: good ones are hard to find (1988).
 * Never for the product: neighbouring seeds give linearly related streams.
 */
export class ToyGenerator {
  state: number

  constructor(seed: number) {
    this.state = seed
  }

  u(): number {
    this.state = (16807 * this.state) % 2147483647
    return this.state / 2147483647
  }

  /** near normal: twelve uniforms added from left to right, less 6 */
  z(): number {
    let sum = 0
    for (let i = 0; i < 12; i++) sum += this.u()
    return sum - 6
  }
}

/** Rounded to one decimal, as in a time study. */
export const r1 = (value: number): number => Math.floor(10 * value + 0.5) / 10
