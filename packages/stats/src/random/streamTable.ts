import { StatisticsError } from '../statisticsError.ts'
import { ALEA_STATE, type AleaPrefix, makePrefix, seedAlea, setPrefix, stepAlea, stepAleaBlock } from './alea.ts'
import { lettersInto } from './mash.ts'

/** Carry of a stream that has not been drawn from since the reset: it is started by its first draw. Any other is 0 or more. */
const UNSTARTED = -1

/**
 * The named random streams of one replication, for the hot loop: `next(i)` writes the next uniform of stream i into `u[0]` and allocates nothing.
 *
 * A stream is its name: adding, removing or reordering others changes none of its draws.
 *
 * @example (t => { t.next(1); return t.u[0] })(new StreamTable('20240607', 0, ['mix', 'task/OP20'])) // => 0.5541982368951481
 */
export class StreamTable {
  /** the uniform that the last `next` made; 0 < u < 1; length 1 */
  readonly u: Float64Array = new Float64Array(1)
  readonly names: readonly string[]
  /** four numbers a stream, in the order of names */
  private readonly state: Float64Array
  private readonly prefix: AleaPrefix = makePrefix()
  /** those of all names, one after the other; first and one past the last of each */
  private readonly letters: Uint16Array
  private readonly first: Int32Array

  /**
   * @param seed         not empty, without '/'
   * @param replication  whole number from 0
   * @param names        all different; the index of a name is the index of its stream
   * @throws StatisticsError E_SEED, E_STREAM_NAME
   */
  constructor(seed: string, replication: number, names: readonly string[]) {
    const seen = new Set<string>()
    for (const name of names) {
      if (seen.has(name)) {
        throw new StatisticsError(
          'E_STREAM_NAME',
          `Two streams are called "${name}": they would share their draws; give each its own name.`,
        )
      }
      seen.add(name)
    }
    this.names = [...names]
    const text = names.join('')
    this.letters = new Uint16Array(text.length)
    lettersInto(this.letters, text)
    this.first = new Int32Array(names.length + 1)
    for (let i = 0; i < names.length; i++) this.first[i + 1] = this.first[i]! + names[i]!.length
    this.state = new Float64Array(ALEA_STATE * names.length)
    this.reset(seed, replication)
  }

  /** All streams at their first draw again, for this seed and replication; the arrays stay. */
  reset(seed: string, replication: number): void {
    setPrefix(this.prefix, seed, replication)
    for (let at = 0; at < this.state.length; at += ALEA_STATE) this.state[at] = UNSTARTED
  }

  /** The next uniform of the stream into `u[0]`. @param stream index into names */
  next(stream: number): void {
    const place = ALEA_STATE * stream
    if (this.state[place]! < 0) this.start(stream)
    stepAlea(this.state, place, this.u, 0)
  }

  /** The next uniform of the stream into `out[at]`: for lists of draws by serial. */
  nextInto(stream: number, out: Float64Array, at: number): void {
    const place = ALEA_STATE * stream
    if (this.state[place]! < 0) this.start(stream)
    stepAlea(this.state, place, out, at)
  }

  /** The next `count` uniforms of the stream into `out[at …]`: quicker than one by one, the same values. */
  nextBlockInto(stream: number, out: Float64Array, at: number, count: number): void {
    const place = ALEA_STATE * stream
    if (this.state[place]! < 0) this.start(stream)
    stepAleaBlock(this.state, place, out, at, count)
  }

  private start(stream: number): void {
    seedAlea(this.state, ALEA_STATE * stream, this.prefix, this.letters, this.first[stream]!, this.first[stream + 1]!)
  }
}
