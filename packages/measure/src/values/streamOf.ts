/** Random streams of names from tables. */
import { type Stream, stream } from '@loopwright/stats'

/**
 * The stream `<use>/<name>`; a "/" in the name would part it, so it becomes a blank.
 *
 * @param use  `bootstrap`, `input`
 */
export const streamOf = (seed: string, replication: number, use: string, name: string): Stream =>
  stream(seed, replication, `${use}/${name.replaceAll('/', ' ')}`)
