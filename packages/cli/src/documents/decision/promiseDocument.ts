/** The document of `loopwright promise --json`. */
import type { PromiseResult, PromiseRuns } from '@loopwright/notebook/decision'
import { alternativeHead, alternativeHeadSchema } from './decisionParts.ts'
import { chance, count, documentSchema, list, number, orNull, record, type Schema, share, text } from '../schemaParts.ts'

export function promiseDocument(
  file: string,
  { name, section, crew, forecast, scenario, slower }: PromiseRuns,
  { kind, ...result }: PromiseResult,
): object {
  const { shift, week, overtime, shiftsPerWeek, netSeconds } = forecast
  return {
    ...alternativeHead(kind, file, name),
    scenario: scenario.name,
    crew,
    carriers: scenario.line.carriers.count,
    until: section.until,
    plan: shift.plan,
    netSeconds,
    shiftsPerWeek,
    shiftUnits: shift.units,
    shift: pointsOf(shift),
    week: pointsOf(week),
    meetsPlan: shift.meetsPlan,
    overtimeMinutes: overtime === null ? null : { mean: overtime.mean.mean, badShift: overtime.p90?.point ?? null },
    slower,
    ...result,
  }
}

export const pointsOf = ({ p10, p50, p90 }: PromiseRuns['forecast']['shift']): object => ({
  p10: p10?.point ?? null,
  p50: p50?.point ?? null,
  p90: p90?.point ?? null,
})

export const points = (of: string): Schema =>
  record(
    {
      p10: orNull(number('nine of ten make as much or more')),
      p50: orNull(number('half of them do')),
      p90: orNull(number('one of ten does')),
    },
    of,
  )

export const rampSchema = (): Schema =>
  list(
    record(
      {
        week: count('from 1'),
        factor: number('mean work over standard'),
        units: number('expected'),
        before: number('units made before it'),
        low: number('nine of ten weeks at least, as of the line at its standard'),
      },
      'one week',
    ),
    'ramp-up; empty: no learning is told',
  )

/** JSON Schema of that document. */
export function promiseSchema(): Schema {
  return documentSchema(
    'A promise, by loopwright',
    record(
      {
        ...alternativeHeadSchema('promise'),
        scenario: text('its name'),
        crew: orNull(count('persons on a shift')),
        carriers: count('number of carriers'),
        until: text('until when it holds, in the words of the file'),
        plan: orNull(number('units wanted per shift')),
        netSeconds: number('of a shift, without breaks'),
        shiftsPerWeek: count('shifts'),
        shiftUnits: list(number('units'), 'per shift, by replication'),
        shift: points('units per shift'),
        week: points('units per week'),
        meetsPlan: orNull(chance('shifts with at least the plan')),
        overtimeMinutes: orNull(
          record(
            { mean: number('minutes a shift'), badShift: orNull(number('minutes, one shift of ten needs as much or more')) },
            'that the plan takes; null: no plan',
          ),
        ),
        slower: list(
          record({ factor: number('times the standard work'), mean: number('units per shift') }, 'one simulated line'),
          'for the ramp-up',
        ),
        takt: orNull(number('seconds')),
        lineEfficiency: orNull(number('units over those of the cycle by mean times')),
        balanceLoss: orNull(number('share of the stations’ time without work')),
        constraint: orNull(
          record(
            {
              station: text('title'),
              effectiveness: record(
                {
                  plannedBusy: number('PBT, seconds'),
                  availability: share('APT over PBT'),
                  effectiveness: number('PRI · PQ over APT'),
                  quality: share('GQ over PQ'),
                  oee: number('the product'),
                },
                'ISO 22400',
              ),
              starvedShare: share('of the shift'),
              blockedShare: share('of the shift'),
              plannedSeconds: number('of a shift, breaks outside'),
              losses: list(
                record({ name: text('state, or stop'), seconds: number('of a shift, mean') }, 'one loss'),
                'time that does not produce',
              ),
            },
            'the station that limits, or that what limits is at',
          ),
        ),
        ramp: rampSchema(),
      },
      'What `loopwright promise --json` prints. Units, seconds, shares from 0 to 1.',
    ),
  )
}
