/** One number of carriers in a document: means over replications, as the study tells them. */
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from '@loopwright/line'
import {
  byName,
  chance,
  count,
  flag,
  list,
  number,
  orNull,
  outputInterval,
  quantile,
  record,
  type Schema,
  share,
  shownMean,
  stops,
  text,
  verdict,
  words,
} from './schemaParts.ts'

export const countSchema = (): Schema =>
  record(
    {
      carriers: count('number of carriers'),
      replications: count('replications that are in'),
      units: list(number('units'), 'output per window, by replication'),
      mean: orNull(outputInterval('output per window, units')),
      controlled: orNull(shownMean()),
      p10: orNull(quantile('nine of ten windows are better')),
      p50: orNull(quantile('half of the windows are better')),
      p90: orNull(quantile('one of ten windows is better')),
      meetsPlan: orNull(chance('windows with at least the plan')),
      planVerdict: orNull(verdict('whether nine of ten windows meet the plan')),
      singleShift: orNull(
        record(
          {
            n: count('windows simulated'),
            low: number('units'),
            high: number('units'),
            level: share('asked for'),
            method: words(['order statistics', 'Student t', 'none needed'], 'Student t: fewer than 39 windows, assumes a normal shape'),
            coverage: orNull(share('chance that the window lies within; null: not known for any shape')),
          },
          'one further window, 95 of 100',
        ),
      ),
      gridlocks: count('replications that ended in gridlock'),
      moving: orNull(
        record(
          {
            replications: count('that did not end in gridlock'),
            mean: orNull(outputInterval('their output per window, units')),
            low: orNull(number('least units of one of them')),
            high: orNull(number('most units of one of them')),
          },
          'the replications that did not end in gridlock; null where all did not',
        ),
      ),
      outOfProducts: count('replications that ran out of products'),
      law: orNull(
        record(
          {
            carrierLimited: number('carriers per second'),
            stationLimited: orNull(number('carriers per second; null: no limit')),
            spaceLimited: orNull(number('carriers per second; null: no limit')),
            rate: number('the least of the three'),
            regime: words(['carrier-limited', 'station-limited', 'space-limited'], 'which of them it is'),
            exact: flag('holds exactly; else an estimate'),
          },
          'the law for this number of carriers; null: the line is no single closed loop',
        ),
      ),
      stations: list(
        record(
          {
            name: text('of the station'),
            title: text('what people call it'),
            shares: byName(STATION_STATES, share('of the window'), 'share of the window in each state; they sum to 1'),
            longestBlockSecondsMean: number('longest unbroken time blocked, mean over replications'),
            stoppedBy: stops('stopped and break, by cause; causes that overlap each count whole'),
          },
          'one station',
        ),
        'means over replications',
      ),
      zones: list(
        record(
          {
            name: text('of the zone'),
            occupancyMean: number('carriers in it, time average'),
            shares: byName(ZONE_STATES, share('of the window'), 'share of the window in each state; they sum to 1'),
          },
          'one zone',
        ),
        'means over replications',
      ),
      carrierShares: orNull(byName(CARRIER_STATES, share('of the carriers’ time'), 'what the carriers do')),
      outputByHour: list(number('units'), 'mean output in each hour of the window; the last may be a part of one'),
      hourSpread: list(
        record(
          { p10: number('units that one of ten windows stays below'), p90: number('units that one of ten exceeds') },
          'eight of ten windows',
        ),
        'spread of the output of each hour; empty below ten replications',
      ),
      stoppedBy: stops('by cause', { count: number('stops per window') }),
      lapSecondsMean: orNull(number('lap of a carrier')),
      timeInLineSecondsMean: orNull(number('from load start to unload end')),
      productsInLineMean: orNull(number('products on the loop, time average')),
    },
    'one number of carriers',
  )
