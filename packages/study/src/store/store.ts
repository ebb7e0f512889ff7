/** Where finished replications are kept, so that an interrupted study goes on where it stopped and a widened one runs only what is new. */

/** Consecutive replications of one key, as bytes. */
export interface StoreEntry {
  /** replications from (included) … to (excluded) */
  readonly from: number
  readonly to: number
  readonly bytes: Uint8Array
}

/**
 * Keeps entries under keys. What was written is given back as it was or not at all; nothing here ever stops a study.
 * A key stands for all that decides the bytes (line, number of carriers, seed, engine), so two writers of one place write the same.
 */
export interface Store {
  /** Whole entries, ascending by `from`; they may overlap. */
  read(key: string): StoreEntry[]
  write(key: string, entry: StoreEntry): void
  /** Forgets an entry whose content cannot be used. */
  drop(key: string, entry: Pick<StoreEntry, 'from' | 'to'>): void
  readonly report: StoreReport
}

/** What happened since the store was opened. */
export interface StoreReport {
  /** replications given back, and written */
  readonly recalled: number
  readonly kept: number
  /** entries that were damaged: noticed, dropped, and computed again */
  readonly damaged: number
  /** why something could not be kept or read, in words; null: nothing went wrong */
  readonly trouble: string | null
}
