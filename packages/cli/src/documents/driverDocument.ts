/** The document of `loopwright drivers --json`. */
import { STATION_STATES } from '@loopwright/line'
import { LIMIT_KINDS } from '@loopwright/line/bounds'
import { DRIVER_KINDS, type DriverResult } from '@loopwright/study'
import { differenceSchema } from './compareDocument.ts'
import { lawDocument, lawSchema, scenarioHead, scenarioSchema, type Source, studyHead } from './head.ts'
import {
  count,
  documentSchema,
  flag,
  list,
  map,
  meanInterval,
  number,
  orNull,
  outputInterval,
  record,
  type Schema,
  share,
  text,
  words,
} from './schemaParts.ts'
import { formHead } from './form.ts'

export function driverDocument(source: Source, result: DriverResult): object {
  const { kind, law, limits, drivers, explanation, wholeChanges, diagnosis, ...rest } = result
  const { line } = source.scenario
  const name = (station: number | null): string | null => (station === null ? null : line.stations[station]!.name)
  return {
    ...formHead(kind),
    scenario: scenarioHead(source),
    ...rest,
    drivers: drivers.map((driver, index) => ({ ...driver, station: name(driver.station), limits: limits.includes(index) })),
    wholeChanges: wholeChanges.map(({ operator: _, ...change }) => change),
    diagnosis:
      diagnosis === null
        ? null
        : {
            limitedBy: diagnosis.limitedBy?.name ?? null,
            kind: diagnosis.limitedBy?.kind ?? null,
            evidence: diagnosis.evidence.map(({ source: from, named }) => ({ source: from, names: named?.name ?? null })),
            agrees: diagnosis.agrees,
          },
    explanation:
      explanation === null
        ? null
        : {
            stations: explanation.stations.map((each) => ({ ...each, station: name(each.station) })),
            arrows: (explanation.arrows?.arrows ?? []).map(([from, to]) => ({
              from: name(explanation.stations[from]!.station),
              to: name(explanation.stations[to]!.station),
            })),
            candidate: name(explanation.candidate),
          },
    law: lawDocument(law, line),
  }
}

/** JSON Schema of that document. */
export function driverSchema(): Schema {
  return documentSchema(
    'A study of drivers of loopwright',
    record(
      {
        ...studyHead('drivers'),
        scenario: scenarioSchema(),
        step: share('by which each driver is changed, up and down'),
        carriers: count('number of carriers'),
        gridlocks: count('replications in which the line as it is stood still for good'),
        outOfProducts: count('replications in which it ran out of products'),
        base: orNull(outputInterval('output per window of the line as it is, units')),
        drivers: list(
          record(
            {
              kind: words(DRIVER_KINDS, 'what is changed'),
              name: text('in words'),
              station: orNull(text('name')),
              lessIsBetter: flag('less of it is the improvement that was measured; else more'),
              elasticity: meanInterval('per cent more output for one per cent of improvement'),
              unitsOfStep: number('units per window that one step brings'),
              limits: flag('shown to bring output, and not to be told from what brings most'),
            },
            'one driver',
          ),
          'the largest gain first',
        ),
        oneCarrierMore: orNull(differenceSchema('one carrier more, units per window')),
        oneCarrierLess: orNull(differenceSchema('one carrier less, units per window')),
        wholeChanges: list(
          record(
            {
              kind: words(['operator', 'carrier', 'repair crew'], 'what is added or taken away'),
              name: text('of the operator; else what it is'),
              step: number('1: one more, -1: one fewer'),
              count: count('how many there are now; of operators those who cover the same stations'),
              difference: differenceSchema('units per window'),
            },
            'one whole more or fewer',
          ),
          'the largest gain first',
        ),
        diagnosis: orNull(
          record(
            {
              limitedBy: orNull(text('what limits the line, by its name')),
              kind: orNull(words([...LIMIT_KINDS, 'time'], 'what it is')),
              evidence: list(
                record(
                  { source: words(['limit', 'states', 'one more', 'driver'], 'where it comes from'), names: orNull(text('what it names')) },
                  'one piece of evidence',
                ),
                'what leads first',
              ),
              agrees: flag('all that name something name the same'),
            },
            'what limits the line, by mean times, waiting and changes',
          ),
        ),
        explanation: orNull(
          record(
            {
              stations: list(
                record(
                  {
                    station: text('name'),
                    blockedShare: share('of the window'),
                    starvedShare: share('of the window'),
                    shares: record(Object.fromEntries(STATION_STATES.map((state) => [state, share('of the window')])), 'all ten states'),
                  },
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
  )
}
