/** A finding about a scenario file: what, where, and how to mend it. Lines and columns count from 1. */
export interface Problem {
  readonly code: ProblemCode
  readonly severity: 'error' | 'warning'
  /** field path such as `stations.S2.zone` */
  readonly path: string
  /** the change in which it stands, such as `drive.speed=12 m/min`; line and column then count in this text. Without: it stands in the file */
  readonly change?: string
  readonly line: number
  readonly column: number
  readonly length: number
  readonly message: string
  readonly fix: string
}

/** `E_…` for errors, `W_…` for warnings; the whole list is in messages.ts. */
export type ProblemCode = string
