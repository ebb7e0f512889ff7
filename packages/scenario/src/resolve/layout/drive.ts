/** What the whole line has in common: reaction time and stagger. */

import type { Located } from '../../text/located.ts'
import { type Context, child, quantity, quantityOrNone } from '../context.ts'

const REACTION_SECONDS = 0.1

export function readDrive(context: Context, root: Located): { reaction: number | undefined; stagger: number | undefined } {
  const drive = child(root, 'drive')
  // paths and zones read these too; where there are none yet, what is wrong with them shows all the same
  quantityOrNone(context, child(drive, 'speed'), 'speed', 'above zero')
  quantityOrNone(context, child(drive, 'acceleration'), 'acceleration', 'above zero')
  quantity(context, child(drive, 'sensorBeforeStop'), 'length', 'zero')
  const reactionAt = child(drive, 'reaction')
  const staggerAt = child(drive, 'stagger')
  if (reactionAt === null) context.origins.set('drive.reaction', 'default')
  if (staggerAt === null) context.origins.set('drive.stagger', 'default: the reaction time')
  const reaction = reactionAt === null ? REACTION_SECONDS : quantity(context, reactionAt, 'duration', 'zero')
  const stagger = staggerAt === null ? reaction : quantity(context, staggerAt, 'duration', 'zero')
  return { reaction, stagger }
}
