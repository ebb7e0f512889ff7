/** Words of a time study. */
import { formatNumber } from '@loopwright/charts/table'
import type { TaskTimes } from '@loopwright/measure'

/**
 * A task with its variant.
 *
 * @example timesName({ task: 'wire', variant: 'small' }) // => 'wire, small'
 */
export const timesName = ({ task, variant }: Pick<TaskTimes, 'task' | 'variant'>): string =>
  variant === null ? task : `${task}, ${variant}`

/**
 * Seconds as tables of times tell them.
 *
 * @example secondsWords(45.26) // => '45.3'
 */
export const secondsWords = (seconds: number): string => formatNumber(seconds, seconds < 100 ? 1 : 0)
