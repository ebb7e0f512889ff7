/** What all `--json` documents begin with. */
import type { LineSpec } from '@loopwright/line'
import { type Law, workingSeconds } from '@loopwright/line/bounds'
import type { Scenario } from '@loopwright/scenario'
import { named } from './named.ts'
import { count, flag, list, map, number, orNull, record, type Schema, share, text } from './schemaParts.ts'
import { formHead, formHeadSchema } from './form.ts'

/** What a document is made from, beside its result. */
export interface Source {
  /** as the user wrote it */
  readonly file: string
  readonly variation: string | null
  readonly scenario: Scenario
}

export function scenarioHead({ file, variation, scenario }: Source): object {
  return { file, variation, name: scenario.name, question: scenario.question }
}

/** What the runs of a study of one line are told with. */
interface Runs {
  readonly kind: string
  readonly engineVersion: string
  readonly seed: string
  readonly replications: number
  readonly chance: boolean
  readonly partial: boolean
  readonly plan: number | null
  readonly window: object
}

/** How the document of a study of one line begins. */
export function runsHead(source: Source, { kind, engineVersion, seed, replications, chance, partial, plan, window }: Runs): object {
  return {
    ...formHead(kind),
    scenario: scenarioHead(source),
    engineVersion,
    seed,
    replications,
    chance,
    partial,
    plan,
    window,
  }
}

/** The law with names in place of indices; null where the line has none. */
export function lawDocument(law: Law | null, spec: LineSpec): object | null {
  if (law === null) return null
  return {
    exact: law.exact,
    estimateReasons: law.estimateReasons,
    lapSeconds: law.lapSeconds,
    exchangeSeconds: law.exchangeSeconds,
    constraint: {
      zone: spec.zones[law.constraintZone]!.name,
      station: law.constraintStation === null ? null : spec.stations[law.constraintStation]!.name,
    },
    holeLapSeconds: law.holeLapSeconds,
    storageZones: law.storageZones,
    carriersLow: law.carriersLow,
    carriersHigh: law.carriersHigh,
    unitsPerLap: law.unitsPerLap,
    unitsPerWindowFactor: law.unitsPerLap * workingSeconds(spec),
    variantShares: named(spec.variants, law.variantShares),
    exchanges: law.exchanges.map((exchange, zone) => ({ zone: spec.zones[zone]!.name, ...exchange })),
  }
}

export const scenarioSchema = (of: string = 'what was simulated'): Schema =>
  record(
    {
      file: text('scenario file, as given'),
      variation: orNull(text('named set of changed values in the file')),
      name: text('name of the scenario'),
      question: text('question of the scenario'),
    },
    of,
  )

export const headSchema = (document: string, replications: string): Record<string, Schema> => ({
  ...formHeadSchema(document),
  scenario: scenarioSchema(),
  engineVersion: text('version of the engine'),
  seed: text('names the random worlds'),
  replications: count(replications),
  partial: flag('stopped before all replications were done; replications 0 … n − 1 are in'),
  plan: orNull(number('units wanted per window')),
  window: windowSchema(),
})

/** How the schema of a study of several lines begins. */
export const studyHead = (document: string): Record<string, Schema> => ({
  ...formHeadSchema(document),
  engineVersion: text('version of the engine'),
  seed: text('names the random worlds'),
  replications: count('asked for, per line'),
  partial: flag('stopped before all replications were done'),
})

export const windowSchema = (): Schema =>
  record(
    { warmupSeconds: number('statistics begin after this instant'), endSeconds: number('and end with this one') },
    'judged stretch, seconds from the start of the run',
  )

export const lawSchema = (): Schema =>
  orNull(
    record(
      {
        exact: flag('the law holds exactly; else its terms are an estimate'),
        estimateReasons: list(text('one reason'), 'why it is an estimate'),
        lapSeconds: number('lap of one carrier alone'),
        exchangeSeconds: number('the slowest exchange'),
        constraint: record({ zone: text('name'), station: orNull(text('name')) }, 'where the slowest exchange is'),
        holeLapSeconds: number('lap of one hole'),
        storageZones: count('zones where a carrier may wait'),
        carriersLow: orNull(number('from here on the station limits')),
        carriersHigh: orNull(number('up to here; beyond, holes are short')),
        unitsPerLap: number('products taken off per carrier and lap'),
        unitsPerWindowFactor: number('rate (carriers per second) × this = units per window'),
        variantShares: map(share('of all products'), 'share of each variant'),
        exchanges: list(
          record(
            {
              zone: text('name'),
              moveSeconds: number('move in, rest to rest'),
              workSeconds: number('mean work'),
              releaseSeconds: number('mean release'),
              changeSeconds: number('transfer change to the way out'),
              clearSeconds: number('clear, from rest'),
              changeBackSeconds: number('transfer change back'),
              seconds: number('the sum'),
            },
            'one zone',
          ),
          'exchange of each zone',
        ),
      },
      'what limits the loop, without simulation; null: the line is no single closed loop',
    ),
  )

export const chanceFlag = (): Schema =>
  flag('false: nothing in the line is left to chance, every run is the same, and one of each number of carriers is enough')
