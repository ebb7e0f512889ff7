/** Warnings about a line that can be built, but is probably not the one that was meant. */
import type { LineSpec } from '@loopwright/line'
import { lawOrNull, mixShares } from '@loopwright/line/bounds'
import { checkFlow, isRing, longestStay, tellTogether } from '@loopwright/line/check'
import { distributionMean } from '@loopwright/stats'
import type { Located } from '../text/located.ts'
import * as say from '../problems/messages.ts'
import type { StopEntry } from '../scenario.ts'
import { type Context, child, childNamed } from './context.ts'
import type { PathDraft } from './layout/paths.ts'
import type { StationDraft } from './work/stations.ts'
import { checkUsual, checkUsualTimes } from './usual.ts'
import type { ZoneDraft } from './layout/zoneDraft.ts'

interface Drafts {
  readonly zones: readonly ZoneDraft[]
  readonly paths: readonly PathDraft[]
  readonly stations: readonly StationDraft[]
  readonly entries: readonly StopEntry[]
}

export function checkDoubts(context: Context, root: Located, line: LineSpec, drafts: Drafts): void {
  checkWhere(context, line, drafts)
  checkList(context, root, line)
  checkStops(context, root, line, drafts.entries)
  checkOften(context, root, line, drafts.entries)
  checkShape(context, root, line, drafts.zones)
  checkRework(context, root, line)
  checkUsual(context, root, drafts.zones)
  checkUsualTimes(context, drafts.stations, line.tasks)
}

/** Stations that no product reaches, and spurs that no carrier enters. */
function checkWhere(context: Context, line: LineSpec, { zones, paths, stations }: Drafts): void {
  const told = tellTogether(checkFlow(line), ({ part, index, key }) => {
    const station = stations[index]?.at
    const at = part === 'station' ? (childNamed(station, key) ?? station) : (paths[index]!.at ?? zones[line.paths[index]!.to]?.at)
    return at === undefined ? null : { at, key: at.path }
  })
  for (const { at, sentence } of told) context.report.add(at, sentence)
}

const spoken = (seconds: number): string => {
  const [value, unit] = seconds >= 5400 ? [seconds / 3600, 'h'] : seconds >= 100 ? [seconds / 60, 'min'] : [seconds, 's']
  return `${Number(value.toPrecision(2))} ${unit}`
}

/** A list of products that the line has made, as it seems, before the window is over. */
function checkList(context: Context, root: Located, line: LineSpec): void {
  const { mix, window } = line
  if (mix.kind !== 'list') return
  const known = lawOrNull(line)
  const weights = mixShares(mix, line.variants.length)
  const each =
    known === null ? longestStay(line.stations, weights) : Math.max(known.exchangeSeconds, known.lapSeconds / line.carriers.count)
  if (!(each > 0) || mix.sequence.length * each >= window.endSeconds) return
  const at = child(child(child(root, 'products'), 'mix'), 'sequence') ?? root
  const needs = spoken(mix.sequence.length * each)
  context.report.add(at, say.listEnds(mix.sequence.length, needs, spoken(window.endSeconds)))
}

/** A stop that takes longer than the time between two of them. */
function checkStops(context: Context, root: Located, line: LineSpec, stops: readonly StopEntry[]): void {
  const told = new Set<string>()
  for (const { name, timeToFailureSeconds, repairSeconds } of line.breakdowns) {
    const [between, lasts] = [distributionMean(timeToFailureSeconds), distributionMean(repairSeconds)]
    if (lasts <= between) continue
    const entry = stops.find(({ sources }) => sources.some(({ source }) => source === name))?.name ?? name
    if (told.has(entry)) continue
    told.add(entry)
    const at = stopNamed(root, name, stops)
    if (at !== null) context.report.add(child(at, 'lasts') ?? at, say.stopLong(spoken(lasts), spoken(between)))
  }
}

/** of one kind in a run, as the sentence says: more are a wrong unit rather than a line */
const OFTEN = 1_000_000

/** What comes so often that a run takes longer than anybody waits for it. */
function checkOften(context: Context, root: Located, line: LineSpec, stops: readonly StopEntry[]): void {
  const end = line.window.endSeconds
  const told = new Set<string>()
  const tell = (at: Located | null, every: number): void => {
    if (at === null || every * OFTEN >= end || told.has(at.path)) return
    told.add(at.path)
    const shown = every < 1 ? `${Number((every * 1000).toPrecision(2))} ms` : spoken(every)
    context.report.add(at, say.tooOften(shown))
  }
  for (const { name, timeToFailureSeconds, repairSeconds } of line.breakdowns) {
    const at = stopNamed(root, name, stops)
    const every = distributionMean(timeToFailureSeconds) + distributionMean(repairSeconds)
    tell(child(at, 'after') ?? at, every)
  }
  const every = (supply: LineSpec['supply'] | null): number =>
    supply?.arrivals.kind === 'every' ? distributionMean(supply.arrivals.seconds) : Number.POSITIVE_INFINITY
  tell(child(child(root, 'supply'), 'every'), every(line.supply))
  for (const { name, supply } of line.stations)
    tell(child(child(childNamed(child(root, 'stations'), name), 'supply'), 'every'), every(supply))
}

/** Where the file says a stop: by its own name, or by that of its entry. */
function stopNamed(root: Located, name: string, stops: readonly StopEntry[]): Located | null {
  const entry = stops.find(({ sources }) => sources.some(({ source }) => source === name))?.name ?? name
  return childNamed(child(root, 'stops'), name) ?? childNamed(child(root, 'stops'), entry)
}

/** "2 corners to the right and none to the left" */
const turns = (left: number, toLeft: string, right: number, toRight: string): string =>
  left > right
    ? turns(right, toRight, left, toLeft)
    : `${right} ${right === 1 ? 'corner' : 'corners'} to the ${toRight} and ${left === 0 ? 'none' : left} to the ${toLeft}`

/** share of the way round by which a drawing may fail to close; corners and gaps are never told to the centimetre */
const GAP_SHARE = 0.05
const STEPS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const

/** Turns and lengths that do not lead back to where the loop begins; only where every corner says which way it turns. */
function checkShape(context: Context, root: Located, line: LineSpec, zones: readonly ZoneDraft[]): void {
  const turned = zones.filter(({ turn }) => turn !== null)
  if (turned.length === 0 || !isRing(line)) return
  if (zones.some(({ transfer, turn }) => transfer !== null && turn === null)) return
  const at = child(root, 'corners') ?? turned[0]!.at
  const left = turned.filter(({ turn }) => turn === 'left').length
  const right = turned.length - left
  // an odd number of turns is told by itself, for a carrier that is not square
  if (turned.length % 2 === 1 && line.carriers.lengthMetres !== line.carriers.widthMetres) return
  if (Math.abs(left - right) !== 4) {
    context.report.add(at, say.cornersOpen(`it has ${turns(left, 'left', right, 'right')}`))
    return
  }
  let [x, y, round, heading, longest] = [0, 0, 0, 0, 0]
  for (const [k, { distanceMetres }] of line.paths.entries()) {
    const turn = zones[k]!.turn
    if (turn !== null) heading = (heading + (turn === 'right' ? 1 : 3)) % 4
    const distance = distanceMetres ?? 0
    x += STEPS[heading]![0] * distance
    y += STEPS[heading]![1] * distance
    round += distance
    longest = Math.max(longest, distance)
  }
  const gap = Math.hypot(x, y)
  if (line.paths.some(({ distanceMetres }) => distanceMetres === null) || gap <= Math.max(longest, GAP_SHARE * round)) return
  context.report.add(at, say.cornersOpen(`by its lengths the loop ends ${Number(gap.toPrecision(2))} m from where it begins`))
}

/** Rejected products that nothing can mend and nobody takes off. */
function checkRework(context: Context, root: Located, line: LineSpec): void {
  if (line.stations.some(({ unload, accepts }) => unload !== null && accepts !== 'good')) return
  const made = mixShares(line.mix, line.variants.length)
  const has = (task: number, variant: number): boolean =>
    line.stations.some((one) =>
      [...(one.work ?? []), ...(one.load ?? [])].some((each) => each.task === task && each.seconds[variant] != null),
    )
  for (const { task } of line.rework.filter(({ only }) => only)) {
    const stuck = line.variants.filter(
      (_, variant) =>
        made[variant]! > 0 && !has(task, variant) && line.inspections.some((one) => one.rejectProbability > 0 && has(one.task, variant)),
    )
    const name = line.tasks[task]!
    const at = childNamed(child(root, 'rework'), name)
    if (at !== null && stuck.length > 0) context.report.add(at, say.reworkWithoutTime(name, stuck))
  }
}
