/** The documents of `loopwright acceptance --json` and `loopwright trial --json`. */
import type { AcceptanceResult, TrialResult } from '@loopwright/notebook/decision'
import { alternativeHead, alternativeHeadSchema } from './decisionParts.ts'
import { count, documentSchema, flag, list, number, orNull, record, type Schema, share, text, words } from '../schemaParts.ts'

export function acceptanceDocument(file: string, name: string, result: AcceptanceResult): object {
  return { ...alternativeHead('acceptance', file, name), ...partsOf(result) }
}

function partsOf({ trials: { kind: _, ...trials }, band, plan, sequential }: AcceptanceResult): object {
  return { trials, band, plan, sequential }
}

export function trialDocument(file: string, name: string, { kind, counts, standing, acceptance }: TrialResult): object {
  return { ...alternativeHead(kind, file, name), counts, standing, ...partsOf(acceptance) }
}

const paths = (of: string): Schema => list(list(count('units so far'), 'by look'), of)

const parts = (): Record<string, Schema> => ({
  trials: record(
    {
      engineVersion: text('version of the engine'),
      seed: text('names the random worlds'),
      replications: count('trials of each line'),
      partial: flag('stopped before all were done'),
      seconds: number('length of a trial'),
      looks: list(number('seconds from its start'), 'when it is looked at'),
      longer: number('of the slower line: each task takes longer by this share'),
      healthy: paths('trials of the line as it stands'),
      slower: paths('trials of the slower line'),
    },
    'what was simulated',
  ),
  band: record(
    {
      low: number('units'),
      high: number('units'),
      share: share('asked for'),
      covers: share('of further trials, at least'),
      n: count('simulated trials'),
    },
    'what a line that meets its forecast makes',
  ),
  plan: record(
    {
      trials: count('of the test'),
      passFrom: number('units, all trials together'),
      falseAlarm: share('a line that meets its forecast fails'),
      miss: share('the slower line passes'),
      meets: flag('both are as small as asked'),
    },
    'the test',
  ),
  sequential: record(
    {
      shares: list(share('of the trial'), 'at each look'),
      stopBelow: list(orNull(number('units; null: no count stops it')), 'at each look'),
      falseAlarmFitted: share('in the trials that the limits were made from'),
      falseAlarm: share('in trials that were kept apart'),
      miss: share('of the slower line’s trials that no look stops'),
      stoppedBy: list(share('of the slower line’s trials'), 'stopped at this look or before'),
    },
    'the check while it runs',
  ),
})

/** JSON Schema of the acceptance. */
export function acceptanceSchema(): Schema {
  return documentSchema(
    'An acceptance, by loopwright',
    record(
      { ...alternativeHeadSchema('acceptance'), ...parts() },
      'What `loopwright acceptance --json` prints. Units, seconds, shares from 0 to 1.',
    ),
  )
}

/** JSON Schema of a trial. */
export function trialSchema(): Schema {
  return documentSchema(
    'A trial, by loopwright',
    record(
      {
        ...alternativeHeadSchema('trial'),
        counts: list(count('units so far'), 'at each look so far'),
        standing: record(
          {
            state: words(['stopped: below what the forecast allows', 'goes on', 'passed', 'above the band'], 'how it stands'),
            looks: count('taken'),
            stoppedAt: orNull(count('the look that stopped it, from 0; null: none did')),
            count: count('units so far'),
          },
          'how it stands',
        ),
        ...parts(),
      },
      'What `loopwright trial --json` prints. Units, seconds, shares from 0 to 1.',
    ),
  )
}
