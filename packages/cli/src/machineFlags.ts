import type { StoreFlags } from './keptRuns.ts'
import type { ThreadFlags } from './threads.ts'

/** What the options say of other machines. */
export interface MachineFlags extends ThreadFlags, StoreFlags {
  /** a share of the study */
  readonly part?: { readonly part: number; readonly of: number }
  /** address of a queue whose workers run the study */
  readonly queue?: string
}

/** Whether other machines have a part in it. */
export const isShared = ({ part, queue }: MachineFlags): boolean => part !== undefined || queue !== undefined
