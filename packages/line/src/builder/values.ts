/** Single values of a sketch: numbers, times, names and what they refer to. */
import { checkDistribution, type Distribution } from '@loopwright/stats'
import { nameFault } from '../check/nameFault.ts'
import { nearest } from '../check/nearest.ts'
import type { Sentence } from '../check/sentence.ts'
import { sentences as say } from '../check/sentences.ts'
import { REACH_SECONDS, secondsText, timeReach } from '../check/timeReach.ts'
import { STORE } from '../spec.ts'
import type { Report } from './report.ts'
import type { PlaceRef, Ref, Time } from './sketch.ts'

/** what the place outside an open line is called */
export const STORE_WORD = 'store'

/** A number within its range; a finding and the number itself where it is not. */
export function amount(report: Report, path: string, value: number, least: 'zero' | 'above zero'): number {
  if (!Number.isFinite(value)) report.add(path, say.notFinite(String(value)))
  else if (value < 0) report.add(path, say.negative(String(value)))
  else if (value === 0 && least === 'above zero') report.add(path, say.zero(String(value)))
  return value
}

/** Seconds within their range, and not too many to compute with. */
export function duration(report: Report, path: string, value: number, least: 'zero' | 'above zero'): number {
  amount(report, path, value, least)
  if (Number.isFinite(value) && value > REACH_SECONDS) report.add(path, say.timesBeyondReach(`a time of ${secondsText(value)} is`))
  return value
}

export function whole(report: Report, path: string, value: number, least: number): number {
  if (!Number.isInteger(value)) report.add(path, say.notWhole(String(value)))
  else if (value < least) report.add(path, say.tooSmall(String(value), least))
  return value
}

/** A share, 0 … 1. */
export function share(report: Report, path: string, value: number): number {
  amount(report, path, value, 'zero')
  if (value > 1) report.add(path, say.shareBeyond(String(value)))
  return value
}

/** Seconds as a constant; a distribution as it is, if it can be drawn from. After a finding a second stands in, so that the rest can be read. */
export function time(report: Report, path: string, value: Time): Distribution {
  const before = report.problems.length
  const wanted: Distribution = typeof value === 'number' ? { kind: 'constant', value: amount(report, path, value, 'zero') } : value
  if (report.problems.length === before) for (const reason of checkDistribution(wanted)) report.add(path, say.distributionRefused(reason))
  const beyond = report.problems.length > before ? null : timeReach(wanted)
  if (beyond !== null) report.add(path, beyond)
  return report.problems.length > before ? STAND_IN : wanted
}

const STAND_IN: Distribution = { kind: 'constant', value: 1 }

export const isTime = (value: object | number): value is Time =>
  typeof value === 'number' || ('kind' in value && typeof value.kind === 'string')

/** A name where it is declared. */
export function checkName(report: Report, path: string, name: string): void {
  const fault = nameFault(name)
  if (fault !== null) report.add(path, say.badName(name, fault))
}

/** Names that differ; `what` in the plural, such as `zones`. */
export function checkNames(report: Report, what: string, names: readonly string[], path: (name: string) => string): void {
  const seen = new Set<string>()
  for (const name of names) {
    checkName(report, path(name), name)
    if (seen.has(name)) report.add(path(name), say.duplicateName(what, name))
    seen.add(name)
  }
}

type Unknown = (name: string, near: string | null, known: readonly string[]) => Sentence

/** Names with their index. */
export interface Names {
  readonly list: readonly string[]
  readonly unknown: Unknown
  readonly index: ReadonlyMap<string, number>
  /** names by the place in which they are written, which numbers mean; `list` has parts put in and taken out */
  readonly written: readonly string[]
}

/** @param written  default: nothing is put in or taken out */
export const namesOf = (list: readonly string[], unknown: Unknown, written: readonly string[] = list): Names => ({
  list,
  unknown,
  index: new Map(list.map((name, k) => [name, k] as const).reverse()),
  written,
})

/** Index of what is meant; a finding and null where it is not there. */
export function refer(report: Report, path: string, ref: Ref, names: Names): number | null {
  const { list, written, index } = names
  const found =
    typeof ref === 'string' ? index.get(ref) : written === list ? (ref in list ? ref : undefined) : index.get(written[ref] ?? '')
  if (found !== undefined) return found
  const name = typeof ref === 'string' ? ref : (written[ref] ?? String(ref))
  report.add(path, names.unknown(name, nearest(name, list), list))
  return null
}

/** Indices of those of several that are there; a finding for each of the others. */
export const referAll = (report: Report, path: string, refs: readonly Ref[], names: Names): number[] =>
  refs.flatMap((ref) => refer(report, path, ref, names) ?? [])

/** One, several or none, as a list. */
export const listed = <T>(given: T | readonly T[] | undefined): readonly T[] =>
  given === undefined ? [] : Array.isArray(given) ? (given as readonly T[]) : [given as T]

export const referPlace = (report: Report, path: string, ref: PlaceRef, zones: Names): number | null =>
  ref === STORE_WORD ? STORE : refer(report, path, ref, zones)
