/** The document of `loopwright stoplog --json`. */
import { distributionRecordSchema } from '@loopwright/scenario'
import type { StopLog, StopStudy } from '@loopwright/measure'
import { tablesHead, tablesHeadSchema } from './accountDocument.ts'
import { count, distribution, documentSchema, flag, list, number, orNull, record, type Schema, share, text, words } from '../schemaParts.ts'

export function stoplogDocument(logs: readonly StopLog[], study: StopStudy): object {
  const { times, ...rest } = study
  return {
    ...tablesHead('stoplog', logs),
    ...rest,
    stops: times.map(({ stops, choice, repairs, ...numbers }) => ({
      ...numbers,
      repairs,
      family: choice?.chosen?.fit.family ?? null,
      lines: stops.map(({ line }) => line),
    })),
  }
}

/** JSON Schema of that document. */
export function stoplogSchema(): Schema {
  const seconds = (says: string): Schema => number(`seconds, ${says}`)
  return documentSchema(
    'A stop log, by loopwright',
    record(
      {
        ...tablesHeadSchema('stoplog'),
        from: seconds('start of the log, wall clock from 1970-01-01'),
        to: seconds('end of the log'),
        endsGuessed: flag('the ends were not given'),
        clock: words(['operating', 'calendar'], 'which clock the time between runs on'),
        places: list(
          record(
            {
              place: text('name'),
              seconds: seconds('of the log in which the line works'),
              down: seconds('that it stood'),
              availability: share('of the log'),
              low: orNull(share('lower limit of the 95 % interval in the long run')),
              high: orNull(share('upper limit')),
            },
            'one place',
          ),
          'as first met',
        ),
        outside: list(record({ place: text('name'), line: count('line') }, 'one stop'), 'in hours without work: they do not count'),
        overlaps: list(record({ place: text('name'), lines: list(count('line'), 'two') }, 'two stops over each other'), 'as met'),
        stops: list(
          record(
            {
              place: text('name'),
              cause: text('as logged'),
              short: flag('shorter than the limit'),
              n: count('stops that began within the log'),
              exposure: seconds('that the clock ran'),
              between: orNull(seconds('mean time between')),
              betweenLow: seconds('lower limit of its 95 % interval'),
              betweenHigh: orNull(seconds('upper limit; null: nothing bounds it')),
              repairs: list(seconds('one repair'), 'that are over'),
              open: count('not over when the log ended'),
              repair: orNull(seconds('mean repair')),
              family: orNull(text('curve of the repairs')),
              after: distribution('time between two, as the engine takes it; seconds'),
              lasts: distribution('one stop, as the engine takes it; seconds'),
              standsIn: text('empty: measured; else what stands in'),
              lines: list(count('line'), 'of the table'),
            },
            'one place and cause',
          ),
          'as first met; short ones apart',
        ),
      },
      'What `loopwright stoplog --json` prints.',
    ),
    { distribution: distributionRecordSchema() },
  )
}
