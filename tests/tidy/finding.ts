/** One thing that a house rule objects to. Every rule is a pure function from sources to findings, so that it can be tried on bad samples. */
export interface Finding {
  readonly file: string
  readonly line: number
  readonly message: string
}

/** `packages/x/src/y.ts:3: X is banned, use Y` */
export function say(finding: Finding): string {
  return `${finding.file}:${finding.line}: ${finding.message}`
}
