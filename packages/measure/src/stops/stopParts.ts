/** What a stop log gives to a scenario: its stops, as a file says them, each with where it comes from. */
import { writeDistribution } from '@loopwright/scenario'
import { roundedTimes } from '../times/timeParts.ts'
import { STOPS_FEW, type StopStudy, type StopTimes } from './stopStudy.ts'

/** A stop of a scenario. */
export interface StopPart {
  /** its key: no "/" and no line break */
  readonly name: string
  /** `{ at: S3, after: …, lasts: … }` */
  readonly value: string
  readonly from: string
}

/**
 * A part for each place and cause.
 *
 * @param file  of the log, as it is to be named
 * @param at    what a scenario calls a place. Default: as the log does
 * @example stopParts(stopStudy([{ place: 'S3', cause: 'tool', start: 3600, end: 3900, line: 2 }], { from: 0, to: 36000 }), 'stops.csv')[0].name // => 'S3 tool'
 */
export function stopParts({ times, clock }: StopStudy, file: string, at: (place: string) => string = (place) => place): StopPart[] {
  return times.map((one) => {
    const name = [one.place, one.cause, ...(one.short ? ['short'] : [])]
      .filter((word) => word !== '')
      .join(' ')
      .replaceAll(/[/\s]+/g, ' ')
      .slice(0, 190)
    const { after, lasts } = one
    const written = [
      `at: ${JSON.stringify(at(one.place))}`,
      `after: ${writeDistribution(roundedTimes(after))}`,
      `lasts: ${writeDistribution(roundedTimes(lasts))}`,
      ...(clock === 'calendar' ? ['clock: calendar'] : []),
    ]
    return { name, value: `{ ${written.join(', ')} }`, from: `logged, ${file}: ${originOf(one)}`.replaceAll(/\s+/g, ' ') }
  })
}

function originOf({ n, exposure, repairs, standsIn }: StopTimes): string {
  return standsIn !== '' && n < STOPS_FEW
    ? standsIn
    : `${n} stops in ${Math.round(exposure / 360) / 10} h, ${repairs.length} repairs${standsIn === '' ? '' : `, ${standsIn}`}`
}
