/** Where products come from: always there, every so long, or at given times. */
import type { SupplySpec } from '@loopwright/line'
import { CLOCK_STEP } from '@loopwright/line/check'
import { distributionMean } from '@loopwright/stats'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { type Context, child, numberOf, quantity, textOf } from '../context.ts'
import { readDistribution } from './distribution.ts'

/**
 * @param name  of its random stream, unless the file names one
 * @returns undefined where a value in it is wrong
 */
export function readSupply(context: Context, at: Located, name: string): SupplySpec | undefined {
  if (at.kind === 'text') return { name, arrivals: { kind: 'always' }, queueLimit: null }
  const [every, times] = [child(at, 'every'), child(at, 'times')]
  if (at.kind !== 'map') return undefined
  const named = textOf(child(at, 'name')) ?? name
  const queueLimit = numberOf(child(at, 'queue'))
  if ((every === null) === (times === null)) {
    if (every !== null) context.report.add(times!, say.onlyOneOf('times', 'every', 'a supply has one of the two'))
    else if (named !== name || queueLimit !== null || at.entries.size === 0) context.report.add(at, say.supplyForm())
    if (every !== null || at.entries.size === 0 || queueLimit !== null) return undefined
    return { name: named, arrivals: { kind: 'always' }, queueLimit: null }
  }
  if (every !== null) {
    const seconds = readDistribution(context, every)
    if (seconds !== undefined && distributionMean(seconds) < CLOCK_STEP) context.report.add(every, say.supplyAtOnce())
    return seconds === undefined ? undefined : { name: named, arrivals: { kind: 'every', seconds }, queueLimit }
  }
  const instants = times!.items.map((item) => quantity(context, item, 'duration', 'zero'))
  if (instants.includes(undefined)) return undefined
  if (instants.some((instant, k) => k > 0 && instant! < instants[k - 1]!)) context.report.add(times!, say.timesOrder())
  return { name: named, arrivals: { kind: 'list', instants: instants as number[] }, queueLimit }
}
