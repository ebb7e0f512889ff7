/** The document of `loopwright promise --json` where shifts differ. */
import type { ShiftsResult, ShiftsRuns } from '@loopwright/notebook/decision'
import { alternativeHead, alternativeHeadSchema } from './decisionParts.ts'
import { pointsOf, points, rampSchema } from './promiseDocument.ts'
import { chance, count, documentSchema, list, number, orNull, record, type Schema, text } from '../schemaParts.ts'

export function shiftsDocument(
  file: string,
  { name, section, shifts }: ShiftsRuns,
  { kind, day, week, overtime, ramp, ...rest }: ShiftsResult,
): object {
  return {
    ...alternativeHead(kind, file, name),
    until: section.until,
    shifts: shifts.map(({ name: shift, scenario, section: own, crew, forecast, slower }, index) => ({
      name: shift,
      scenario: scenario.name,
      crew,
      daysPerWeek: own.daysPerWeek,
      carriers: scenario.line.carriers.count,
      plan: forecast.shift.plan,
      netSeconds: forecast.netSeconds,
      units: forecast.shift.units,
      shift: pointsOf(forecast.shift),
      meetsPlan: forecast.shift.meetsPlan,
      overtimeMinutes: forecast.overtime?.mean.mean ?? null,
      slower,
      station: rest.shifts[index]!.constraint?.station ?? null,
      oee: rest.shifts[index]!.constraint?.effectiveness.oee ?? null,
    })),
    day: pointsOf(day),
    weekPlan: week.plan,
    weekUnits: week.units,
    week: pointsOf(week),
    weekMeetsPlan: week.meetsPlan,
    overtimeMinutes: overtime,
    ramp,
  }
}

/** JSON Schema of that document. */
export function shiftsSchema(): Schema {
  return documentSchema(
    'A promise of shifts that differ, by loopwright',
    record(
      {
        ...alternativeHeadSchema('promise of shifts'),
        until: text('until when it holds, in the words of the file'),
        shifts: list(
          record(
            {
              name: text('of the shift'),
              scenario: text('its name'),
              crew: orNull(count('persons on it')),
              daysPerWeek: count('days on which it is worked'),
              carriers: count('number of carriers'),
              plan: orNull(number('units wanted')),
              netSeconds: number('without breaks'),
              units: list(number('units'), 'by replication'),
              shift: points('units per shift'),
              meetsPlan: orNull(chance('shifts with at least the plan')),
              overtimeMinutes: orNull(number('minutes that the plan takes, mean')),
              slower: list(
                record({ factor: number('times the standard work'), mean: number('units per shift') }, 'one simulated line'),
                'for the ramp-up',
              ),
              station: orNull(text('the one that limits, or that what limits is at')),
              oee: orNull(number('of that station, ISO 22400')),
            },
            'one shift',
          ),
          'in the order of the day',
        ),
        day: points('units of a day with a shift of each kind'),
        weekPlan: orNull(number('units wanted a week')),
        weekUnits: list(number('units'), 'of each week added up from simulated shifts'),
        week: points('units per week'),
        weekMeetsPlan: orNull(chance('weeks with at least the plan')),
        overtimeMinutes: orNull(number('minutes a week, mean')),
        ramp: rampSchema(),
      },
      'What `loopwright promise --json` prints where shifts differ. Units, seconds, shares from 0 to 1.',
    ),
  )
}
