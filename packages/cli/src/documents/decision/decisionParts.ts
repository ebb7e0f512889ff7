/** Parts that the documents of decisions share. */
import type { Alternative } from '@loopwright/decide'
import type { DecisionRuns } from '@loopwright/notebook/decision'
import { count, flag, list, number, orNull, outputInterval, record, type Schema, text, words } from '../schemaParts.ts'
import { formHead, formHeadSchema } from '../form.ts'

/** How the document of a decision begins. */
export function decisionHead(document: string, { decision, file, result: { comparison, partial, people } }: DecisionRuns): object {
  const { engineVersion, seed, replications, lines } = comparison
  return {
    ...formHead(document),
    file,
    engineVersion,
    seed,
    replications,
    partial,
    today: decision.alternatives[decision.today]!.name,
    currency: decision.currency,
    lines: decision.alternatives.map((alternative, index) => lineDocument(alternative, lines[index]!, people[index]?.handlings ?? [])),
  }
}

function lineDocument(
  { name, source, assumes, floor }: Alternative,
  { carriers, units, mean, gridlocks }: DecisionRuns['result']['comparison']['lines'][number],
  handlings: DecisionRuns['result']['people'][number]['handlings'],
): object {
  return { name, source: source.kind, assumes, floor, carriers, units, mean, gridlocks, handlings }
}

export const doubted = (of: string): Schema =>
  record({ value: number(of), doubt: number('share of the value, 0 … 1: the true one lies within, anywhere alike') }, of)

/** How the document of one alternative begins. */
export const alternativeHead = (document: string, file: string, name: string): object => ({ ...formHead(document), file, name })

export const alternativeHeadSchema = (document: string): Record<string, Schema> => ({
  ...formHeadSchema(document),
  file: text('decision file, as given'),
  name: text('of the alternative'),
})

export const decisionHeadSchema = (document: string): Record<string, Schema> => ({
  ...formHeadSchema(document),
  file: text('decision file, as given'),
  engineVersion: text('version of the engine'),
  seed: text('names the random worlds'),
  replications: count('asked for, per alternative'),
  partial: flag('stopped before all was done'),
  today: text('name of the alternative that stands there today'),
  currency: text('of all amounts; empty without one'),
  lines: list(
    record(
      {
        name: text('of the alternative'),
        source: words(['scenario', 'file', 'variation', 'set'], 'where its line is written'),
        assumes: orNull(text('what the model takes for granted, in the words of the file')),
        floor: orNull(number('square metres')),
        carriers: count('number of carriers'),
        units: list(number('units'), 'output per window, by replication'),
        mean: orNull(outputInterval('output per window, units')),
        gridlocks: count('replications that ended in gridlock'),
        handlings: list(
          record(
            { operator: text('name'), count: number('pushes and pulls, mean per window'), seconds: number('of these, mean per window') },
            'one person',
          ),
          'pushes and pulls, by person',
        ),
      },
      'one alternative',
    ),
    'in the order of the file',
  ),
})
