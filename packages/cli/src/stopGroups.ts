/** Breakdown sources that a scenario writes as one, and variants that share an option: what a person thinks of as one thing. */
import type { LineSpec } from '@loopwright/line'
import type { ScenarioNotes } from '@loopwright/scenario'

export interface StopGroup {
  readonly name: string
  readonly sources: readonly string[]
}

/** "jam Z01" and "jam Z02" come from one entry of the file: they are one group, "jam". Short stops come last. */
export function stopGroups(line: Pick<LineSpec, 'breakdowns'>, notes: Pick<ScenarioNotes, 'shortStops'>): StopGroup[] {
  const groups = new Map<string, string[]>()
  const short = new Set(notes.shortStops.map(({ name }) => name))
  const names = line.breakdowns.map(({ name }) => name)
  for (const name of [...names.filter((each) => !short.has(each)), ...names.filter((each) => short.has(each))]) {
    const entry = name.replace(/ [^ ]+$/, '')
    groups.set(entry, [...(groups.get(entry) ?? []), name])
  }
  return [...groups].map(([name, sources]) => ({ name: sources.length === 1 ? sources[0]! : name, sources }))
}

/** Variants as written, and options: the share of each is one thing to ask about. */
export function mixGroups({ variants, options }: Pick<ScenarioNotes, 'variants' | 'options'>): { name: string; variants: number[] }[] {
  const where = (holds: (each: ScenarioNotes['variants'][number]) => boolean): number[] =>
    variants.flatMap((each, index) => (holds(each) ? [index] : []))
  const written = [...new Set(variants.map(({ variant }) => variant))]
  return [
    ...written.map((name) => ({ name, variants: where(({ variant }) => variant === name) })),
    ...options.map((name) => ({ name, variants: where((each) => each.options.includes(name)) })),
  ]
}
