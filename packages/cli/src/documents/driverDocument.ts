/** The document of `loopwright drivers --json`. */
import type { DriverResult } from '@loopwright/study'
import { differenceSchema, studyHead } from './compareDocument.ts'
import { lawDocument, lawSchema, type Source, scenarioHead } from './head.ts'
import { count, flag, list, map, meanInterval, number, orNull, record, type Schema, share, text, words } from './schemaParts.ts'

export function driverDocument(source: Source, result: DriverResult): object {
  const { kind, law, limits, drivers, explanation, ...rest } = result
  const { line } = source.scenario
  const name = (station: number | null): string | null => (station === null ? null : line.stations[station]!.name)
  return {
    format: 1,
    document: kind,
    scenario: scenarioHead(source),
    ...rest,
    drivers: drivers.map((driver, index) => ({ ...driver, station: name(driver.station), limits: limits.includes(index) })),
    explanation:
      explanation === null
        ? null
        : {
            stations: explanation.stations.map((each) => ({ ...each, station: name(each.station) })),
            arrows: explanation.arrows.arrows.map(([from, to]) => ({
              from: name(explanation.stations[from]!.station),
              to: name(explanation.stations[to]!.station),
            })),
            candidate: name(explanation.candidate),
          },
    law: lawDocument(law, line, 0),
  }
}

export const scenarioSchema = (): Schema =>
  record(
    {
      file: text('scenario file, as given'),
      variation: orNull(text('named set of changed values in the file')),
      name: text('name of the scenario'),
      question: text('question of the scenario'),
    },
    'what was simulated',
  )

/** JSON Schema of that document. */
export function driverSchema(): Schema {
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'A study of drivers of loopwright',
    ...record(
      {
        ...studyHead('drivers'),
        scenario: scenarioSchema(),
        step: share('by which each driver is changed, up and down'),
        carriers: count('number of carriers'),
        base: orNull(meanInterval('output per window of the line as it is, units')),
        drivers: list(
          record(
            {
              kind: words(
                ['task', 'release', 'moves', 'clears', 'reaction', 'transfers', 'repair', 'time to failure', 'mix'],
                'what is changed',
              ),
              name: text('in words'),
              station: orNull(text('name')),
              lessIsBetter: flag('less of it is the improvement that was measured; else more'),
              elasticity: meanInterval('per cent more output for one per cent of improvement'),
              unitsOfStep: number('units per window that one step brings'),
              limits: flag('cannot be told from the largest of all that takes time'),
            },
            'one driver',
          ),
          'the largest gain first',
        ),
        oneCarrierMore: orNull(differenceSchema('one carrier more, units per window')),
        oneCarrierLess: orNull(differenceSchema('one carrier less, units per window')),
        explanation: orNull(
          record(
            {
              stations: list(
                record(
                  { station: text('name'), blockedShare: share('of the window'), starvedShare: share('of the window') },
                  'one station',
                ),
                'in the order of flow',
              ),
              arrows: list(record({ from: text('station'), to: text('station') }, 'one arrow'), 'towards what holds the output up'),
              candidate: orNull(text('station that the arrows end at, the worst')),
            },
            'an explanation, no verdict',
          ),
        ),
        law: lawSchema(),
        lawTerms: orNull(
          map({}, 'the three terms of the law for this number of carriers, carriers per second; null: the line is no single closed loop'),
        ),
      },
      'What `loopwright drivers --json` prints. Units per window, times in seconds, shares from 0 to 1.',
    ),
  }
}
