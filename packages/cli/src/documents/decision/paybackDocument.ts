/** The document of `loopwright payback --json`. */
import type { PaybackResult } from '@loopwright/decide'
import type { DecisionRuns } from '@loopwright/notebook/decision'
import { decisionHead, decisionHeadSchema, doubted } from './decisionParts.ts'
import { documentSchema, flag, list, meanInterval, number, orNull, record, type Schema, share, text, words } from '../schemaParts.ts'

export function paybackDocument(runs: DecisionRuns, { kind, plan, overtimeToday, money, alternatives }: PaybackResult): object {
  return { ...decisionHead(kind, runs), plan, overtimeToday, money: moneyDocument(money), alternatives }
}

/** What is reckoned with, without what the file alone says. */
function moneyDocument({
  wage,
  overtimeFactor,
  daysPerYear,
  shiftsPerDay,
  paidHours,
  years,
  interest,
  hurdleMonths,
  overtimeWorked,
}: PaybackResult['money']): object {
  return { wage, overtimeFactor, daysPerYear, shiftsPerDay, paidHours, years, interest, hurdleMonths, overtimeWorked }
}

const range = (of: string): Schema =>
  record(
    { p10: number('one of ten draws is below'), p50: number('half of the draws are below'), p90: number('nine of ten draws are below') },
    of,
  )

const savings = (of: string): Schema =>
  record(
    {
      minutesPerDay: number('minutes of overtime saved a day'),
      labourHoursPerDay: number('hours of all persons in these minutes'),
      overtime: number('money a year, of overtime'),
      labour: number('money a year, of paid hours of a smaller crew'),
      runningCost: number('money a year; below 0: it costs more'),
      annual: number('the sum'),
    },
    of,
  )

const worth = (of: string): Schema =>
  record(
    {
      paybackMonths: orNull(number('12 · investment / annual; null: never')),
      discountedYears: orNull(number('years until discounted savings pay it back; null: never')),
      netPresentValue: number('money'),
      internalReturn: record(
        {
          rate: orNull(number('share a year')),
          status: words(['ok', 'no sign change', 'several sign changes', 'beyond reach'], 'why there is none'),
        },
        'internal rate of return',
      ),
    },
    of,
  )

const point = (of: string): Schema =>
  orNull(record({ value: number('at which the payback is just the hurdle'), now: number('what it is now') }, of))

/** JSON Schema of that document. */
export function paybackSchema(): Schema {
  return documentSchema(
    'A payback of loopwright',
    record(
      {
        ...decisionHeadSchema('payback'),
        plan: number('units wanted per shift'),
        overtimeToday: number('minutes a shift, mean'),
        money: record(
          {
            wage: doubted('money per person and hour'),
            overtimeFactor: number('an hour of overtime costs so many times the wage'),
            daysPerYear: number('working days'),
            shiftsPerDay: number('shifts'),
            paidHours: number('paid to each person for a shift'),
            years: number('looked at'),
            interest: share('a year'),
            hurdleMonths: number('within which the investment must be back'),
            overtimeWorked: orNull(number('minutes a shift really worked today')),
          },
          'what money is reckoned with',
        ),
        alternatives: list(
          record(
            {
              name: text('of the alternative'),
              saved: meanInterval('minutes of overtime a shift that are saved, same worlds'),
              overtimeBefore: number('minutes a shift, today'),
              overtimeAfter: number('minutes a shift'),
              savings: savings('what is saved'),
              worth: worth('what that makes of the investment'),
              withinHurdle: flag('the investment is back within the hurdle'),
              naive: orNull(
                record(
                  {
                    saving: record(
                      { secondsPerUnit: number('at the constraint, by mean times'), minutesPerDay: number('seconds × units') },
                      'the envelope',
                    ),
                    savings: savings('by seconds × units'),
                    worth: worth('by seconds × units'),
                  },
                  'seconds × units; null: mean times of a line are not known',
                ),
              ),
              spread: record(
                {
                  draws: number('how many'),
                  annual: range('saved a year'),
                  netPresentValue: range('money'),
                  paybackMonths: orNull(range('months; null: more than one of ten draws never pays back')),
                  withinHurdleShare: share('of the draws within the hurdle'),
                  neverShare: share('of the draws that never pay back'),
                  internalReturn: orNull(range('share a year; null: more than one of ten draws has none')),
                },
                'how far the money may be off',
              ),
              breakEven: record(
                {
                  wage: point('money per person and hour, at least'),
                  volume: point('units per shift, at least'),
                  investment: point('money, at most'),
                },
                'where the hurdle is just met; null: nowhere that was looked at',
              ),
              curves: list(
                record(
                  {
                    input: words(['wage', 'volume', 'investment'], 'what is moved'),
                    points: list(
                      record(
                        { factor: number('of the value now'), value: number('of the input'), paybackMonths: orNull(number('null: never')) },
                        'one value',
                      ),
                      'from 60 to 140 % of the value now',
                    ),
                  },
                  'payback against one input',
                ),
                'wage, volume, investment',
              ),
            },
            'one alternative',
          ),
          'all but today',
        ),
      },
      'What `loopwright payback --json` prints. Money in the currency of the file, minutes, months and years as named.',
    ),
  )
}
