/** A variant after options have expanded it, and an option as written. */
import type { Located } from '../../text/located.ts'

export interface Variant {
  readonly name: string
  /** index of the variant as written */
  readonly base: number
  /** indices of its options */
  readonly options: readonly number[]
}

export interface Option {
  readonly name: string
  readonly at: Located
  /** extra seconds by task; undefined where the time is wrong */
  readonly adds: ReadonlyMap<string, number | undefined>
}
