/** What becomes of products and carriers on their way round: where none comes, where nothing is left to do, and goods that nothing is done with. */
import type { LineSpec } from '../spec.ts'
import type { Finding } from './finding.ts'
import { checkGoods } from './goods.ts'
import { checkLeftToDo } from './leftToDo.ts'
import { checkReached } from './reach.ts'

/**
 * Where the products of a complete line do not come to, where no carrier does, where nothing is left to do, and which goods nothing is done with.
 *
 * @example checkFlow(line) // => []
 */
export const checkFlow = (line: LineSpec): Finding[] => [...checkReached(line), ...checkLeftToDo(line), ...checkGoods(line)]
