/**
 * What is known not to hold yet: by rule and command the lines on which it fails, each rule with its reason. An entry that holds again is a
 * failure too, until it is taken out. `TOLD=write npx vitest run tests/told --no-file-parallelism` writes
 * the list anew and keeps the reasons.
 */
import { readFileSync, writeFileSync } from 'node:fs'

export interface KnownRule {
  readonly why: string
  /** lines by command */
  readonly at: Readonly<Record<string, readonly string[]>>
}

export type Known = Readonly<Record<string, KnownRule>>

const FILE = 'tests/told/known.json'

export const KNOWN: Known = JSON.parse(readFileSync(FILE, 'utf8')) as Known

export const isKnown = (rule: string, command: string, line: string, known: Known = KNOWN): boolean =>
  known[rule]?.at[command]?.includes(line) ?? false

/** a command that was told of a line */
export interface Judgement {
  readonly command: string
  readonly line: string
}

export interface Failure extends Judgement {
  readonly rule: string
  readonly findings: readonly string[]
}

/**
 * Writes the list of what fails of what was judged; what is known of the rest stays, and so do the reasons. A rule that fails for the first
 * time gets its first finding as its reason, to be told better by hand.
 */
export function writeKnown(failures: readonly Failure[], judged: readonly Judgement[]): void {
  const before = JSON.parse(readFileSync(FILE, 'utf8')) as Known
  const others = Object.entries(before).flatMap(([rule, { at }]) =>
    Object.entries(at).flatMap(([command, names]) =>
      names
        .filter((line) => !judged.some((one) => one.command === command && one.line === line))
        .map((line) => ({ rule, command, line, findings: [''] })),
    ),
  )
  const all = [...others, ...failures]
  const rules = [...new Set(all.map(({ rule }) => rule))].sort()
  const known = rules.map((rule) => {
    const own = all.filter((failure) => failure.rule === rule)
    const commands = [...new Set(own.map(({ command }) => command))].sort()
    const at = commands.map((command) => [
      command,
      own
        .filter((failure) => failure.command === command)
        .map(({ line }) => line)
        .sort(),
    ])
    return [rule, { why: before[rule]?.why ?? `not yet told: ${own[0]!.findings[0]}`, at: Object.fromEntries(at) as object }]
  })
  writeFileSync(FILE, `${JSON.stringify(Object.fromEntries(known), null, 2)}\n`)
}
