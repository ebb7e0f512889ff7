/**
 * Values that are far from what is usual on conveyors for single goods: most often a wrong unit.
 * All ranges are common practice, no source; wide on purpose, so that a line that somebody built is inside them.
 */
import type { Distribution } from '@loopwright/stats'
import { distributionMean } from '@loopwright/stats'
import type { Located } from '../text/located.ts'
import * as say from '../problems/messages.ts'
import { type Dimension, parseQuantity } from '../text/quantity.ts'
import { child, childNamed, type Context, entries, listed, textOf } from './context.ts'
import type { StationDraft } from './work/stations.ts'
import type { ZoneDraft } from './layout/zoneDraft.ts'

interface Range {
  readonly dimension: Dimension
  /** base units */
  readonly least: number
  readonly most: number
  readonly text: string
}

const SPEED: Range = { dimension: 'speed', least: 1 / 60, most: 2, text: '1 to 120 m/min' }
const RAMP: Range = { dimension: 'acceleration', least: 0.02, most: 10, text: '0.02 to 10 m/s²' }
const REACTION: Range = { dimension: 'duration', least: 0, most: 5, text: 'up to 5 s' }
const CHANGE: Range = { dimension: 'duration', least: 0, most: 120, text: 'up to 2 min' }
const ZONE: Range = { dimension: 'length', least: 0.1, most: 30, text: '0.1 to 30 m' }
const CARRIER: Range = { dimension: 'length', least: 0.05, most: 25, text: '0.05 to 25 m' }
const TASK: Range = { dimension: 'duration', least: 0.2, most: 4 * 3600, text: '0.2 s to 4 h' }
const RELEASE: Range = { dimension: 'duration', least: 0, most: 1800, text: 'up to 30 min' }
/** standard deviation as a share of the mean; hand work has 0.05 to 0.3 */
const SPREAD_MOST = 1

const isOutside = (value: number, { least, most }: Range): boolean => value !== 0 && (value < least || value > most)

export function checkUsual(context: Context, root: Located, zones: readonly ZoneDraft[]): void {
  const drive = child(root, 'drive')
  const owners = [
    drive,
    ...entries(child(root, 'zones')).map(({ value }) => value),
    ...listed(child(root, 'loop')),
    ...listed(child(root, 'paths')),
  ]
  for (const at of owners) {
    look(context, child(at, 'speed'), 'a speed', SPEED)
    look(context, child(at, 'acceleration'), 'an acceleration', RAMP)
  }
  look(context, child(drive, 'reaction'), 'a reaction', REACTION)
  for (const key of ['length', 'width'] as const) look(context, child(child(root, 'carriers'), key), `the ${key} of a carrier`, CARRIER)
  for (const at of [...listed(child(root, 'corners')), ...entries(child(root, 'zones')).map(({ value }) => child(value, 'transfer'))])
    for (const key of ['lift', 'lower'] as const) look(context, child(at, key), `a ${key} time`, CHANGE)
  const seen = new Set<string>()
  for (const { length, at } of zones) {
    const place = child(at, 'length') ?? at
    if (typeof length !== 'number' || !isOutside(length, ZONE) || seen.has(`${place.path} ${length}`)) continue
    seen.add(`${place.path} ${length}`)
    context.report.add(place, say.unusual('a zone', `${Number(length.toPrecision(6))} m`, ZONE.text))
  }
}

/** A quantity as the file writes it; what is no quantity is told elsewhere. */
function look(context: Context, at: Located | null, what: string, range: Range): void {
  const text = textOf(at)
  const value = text === null ? null : parseQuantity(text, range.dimension).value
  if (at !== null && text !== null && value !== null && isOutside(value, range))
    context.report.add(at, say.unusual(what, text.trim(), range.text))
}

/** Times and spreads of tasks and releases: one finding for each task. */
export function checkUsualTimes(context: Context, stations: readonly StationDraft[], tasks: readonly string[]): void {
  for (const { at, spec } of stations) {
    if (spec === null) continue
    for (const duty of ['unload', 'load', 'work'] as const)
      for (const task of spec[duty] ?? []) {
        const place = childNamed(child(at, duty), tasks[task.task]!) ?? at
        const odd = task.seconds.find((time) => time !== null && isOutside(distributionMean(time), TASK))
        const wide = task.seconds.find((time) => time !== null && spreadOf(time) > SPREAD_MOST)
        if (odd) context.report.add(place, say.unusual('a task time', duration(distributionMean(odd)), TASK.text))
        if (wide) context.report.add(place, say.unusual('a task spread', percent(spreadOf(wide)), `up to ${percent(SPREAD_MOST)}`))
      }
    const release = distributionMean(spec.releaseSeconds)
    const releaseAt = child(at, 'release')
    if (releaseAt !== null && isOutside(release, RELEASE))
      context.report.add(releaseAt, say.unusual('a release time', duration(release), RELEASE.text))
  }
}

/** As a share of the mean, where somebody chose it; observed times are what they are. */
function spreadOf(time: Distribution): number {
  return 'cv' in time ? time.cv : 0
}

const percent = (share: number): string => `${Number((100 * share).toPrecision(4))} %`

function duration(seconds: number): string {
  const [value, unit] = seconds >= 7200 ? [seconds / 3600, 'h'] : seconds >= 600 ? [seconds / 60, 'min'] : [seconds, 's']
  return `${Number(value.toPrecision(3))} ${unit}`
}
