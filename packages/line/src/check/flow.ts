/** What becomes of products and carriers on their way round: where none comes, and where nothing is left to do. */
import type { LineSpec } from '../spec.ts'
import type { Finding } from './finding.ts'
import { checkLeftToDo } from './leftToDo.ts'
import { checkReached } from './reach.ts'

/**
 * Where the products of a complete line do not come to, where no carrier does, and where nothing is left to do.
 *
 * @example checkFlow(line) // => []
 */
export const checkFlow = (line: LineSpec): Finding[] => [...checkReached(line), ...checkLeftToDo(line)]
