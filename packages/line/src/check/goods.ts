/** What is said of goods at a station that has nothing to do with them. (MODEL.md §8) */
import { PLAIN_STATION } from '../build/plain.ts'
import type { LineSpec } from '../spec.ts'
import { at, type Finding, found } from './finding.ts'
import { sentences as say } from './sentences.ts'

/** What is said of goods, by the duty that it is for. */
const DUTY_OF = { supply: 'load', receiver: 'unload', accepts: 'unload' } as const
const GOODS = Object.keys(DUTY_OF) as (keyof typeof DUTY_OF)[]

/**
 * Stations with a supply of their own that load nothing, and stations with a receiver or a choice of products that unload nothing.
 *
 * @example checkGoods(line) // => []
 */
export const checkGoods = ({ stations }: LineSpec): Finding[] =>
  stations.flatMap((station, index) =>
    GOODS.filter((key) => station[key] !== PLAIN_STATION[key] && station[DUTY_OF[key]] === null).map((key) =>
      found(at('station', index, key), say.goodsIdle(station.name, key, DUTY_OF[key])),
    ),
  )
