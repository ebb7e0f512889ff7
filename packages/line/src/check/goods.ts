/** What is said of goods at a station that has nothing to do with them. (MODEL.md §8) */
import type { LineSpec } from '../spec.ts'
import { at, type Finding, found } from './finding.ts'
import { sentences as say } from './sentences.ts'

/**
 * Stations with a supply of their own that load nothing, and stations with a receiver or a choice of products that unload nothing.
 *
 * @example checkGoods(line) // => []
 */
export const checkGoods = ({ stations }: LineSpec): Finding[] =>
  stations.flatMap(({ name, load, unload, supply, receiver, accepts }, index) => [
    ...(supply !== null && load === null ? [found(at('station', index, 'supply'), say.goodsIdle(name, 'supply', 'load'))] : []),
    ...(receiver !== null && unload === null ? [found(at('station', index, 'receiver'), say.goodsIdle(name, 'receiver', 'unload'))] : []),
    ...(accepts !== 'good' && unload === null ? [found(at('station', index, 'accepts'), say.goodsIdle(name, 'accepts', 'unload'))] : []),
  ])
