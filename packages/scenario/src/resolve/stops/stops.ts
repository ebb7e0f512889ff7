/** Stops: each entry of the file becomes one breakdown source per part it names. */
import type { BreakdownSpec, SectionSpec } from '@loopwright/line'
import { meanStay, REACH_SECONDS } from '@loopwright/line/check'
import { type Distribution, distributionMean } from '@loopwright/stats'
import { toNumber } from '../../text/decimal.ts'
import type { Entry, Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import type { ShortStop } from '../../problems/notes.ts'
import { digitsOf, scan } from '../../text/quantity.ts'
import type { StopEntry, StopSource } from '../../scenario.ts'
import { addAtKey, type Context, checkName, child, entries, textOf, fail } from '../context.ts'
import { readDistribution } from '../work/distribution.ts'
import type { Products } from '../work/products.ts'
import type { StationDraft } from '../work/stations.ts'
import { type Part, type Parts, readParts } from './stopParts.ts'
import { createTitles } from '../titles.ts'
import type { ZoneDraft } from '../layout/zoneDraft.ts'

export interface Stops {
  readonly breakdowns: readonly BreakdownSpec[]
  readonly shortStops: readonly ShortStop[]
  readonly entries: readonly StopEntry[]
}

interface Line extends Parts {
  readonly products: Products
}

export function readStops(
  context: Context,
  root: Located,
  zones: readonly ZoneDraft[],
  stations: readonly StationDraft[],
  products: Products,
  sections: readonly SectionSpec[],
): Stops {
  const breakdowns: BreakdownSpec[] = []
  const shortStops: ShortStop[] = []
  const seen = new Set<string>()
  const kept = new Map<string, { name: string; title: string; sources: StopSource[] }>()
  const titles = createTitles(context, 'stops')
  const line: Parts = { zones, stations, stationIndex: new Map(stations.map((station, index) => [station.name, index])), sections }
  for (const entry of entries(child(root, 'stops'))) {
    checkName(context, entry.key, (sentence) => addAtKey(context, entry, sentence))
    const at = child(entry.value, 'at')
    const parts = at === null ? null : readParts(context, at, line)
    const several = at !== null && (at.kind === 'list' || textOf(at)?.startsWith('every ') === true)
    const times = readTimes(context, entry)
    const entryName = textOf(child(entry.value, 'entry')) ?? entry.key
    const title = titles.read(entryName, child(entry.value, 'title'), entry)
    for (const part of parts ?? []) {
      const name = several ? `${entry.key} ${part.name}` : entry.key
      if (several) checkName(context, name, (sentence) => addAtKey(context, entry, sentence))
      if (seen.has(name)) addAtKey(context, entry, say.duplicateName('stops', name))
      seen.add(name)
      const of = kept.get(entryName) ?? { name: entryName, title, sources: [] }
      kept.set(entryName, of)
      of.sources.push({ source: name, place: part.name })
      if (times.repair === undefined) continue
      const clock = textOf(child(entry.value, 'clock')) === 'calendar' ? 'calendar' : 'operating'
      let after = times.after
      if (times.chance !== null) {
        const shortStop = readShortStop(context, entry, part, times.chance, name, { ...line, products })
        if (shortStop === null) continue
        shortStops.push(shortStop)
        after = { kind: 'exponential', mean: shortStop.meanTimeToFailureSeconds }
      }
      if (after !== undefined) breakdowns.push({ name, part: part.part, clock, timeToFailureSeconds: after, repairSeconds: times.repair })
      if (!entry.value.entries.has('clock')) context.origins.set(`stops.${name}.clock`, 'default')
      if (times.chance !== null) context.origins.set(`stops.${name}.after`, `from ${entry.value.path}.chance`)
    }
  }
  return { breakdowns, shortStops, entries: [...kept.values()] }
}

interface Times {
  readonly after: Distribution | undefined
  readonly chance: number | null
  readonly repair: Distribution | undefined
}

function readTimes(context: Context, entry: Entry): Times {
  const at = entry.value
  const repair = readDistribution(context, child(at, 'lasts'))
  const afterAt = child(at, 'after')
  const chanceAt = child(at, 'chance')
  if (at.kind === 'map' && (afterAt === null) === (chanceAt === null)) {
    addAtKey(context, entry, say.afterOrChance())
    return { after: undefined, chance: null, repair: undefined }
  }
  const after = readDistribution(context, afterAt)
  if (after !== undefined && distributionMean(after) === 0) context.report.add(afterAt!, say.certainStop())
  const clock = child(at, 'clock')
  if (chanceAt !== null && textOf(clock) === 'calendar') context.report.add(clock!, say.chanceClock())
  const chance = chanceAt === null ? null : readChance(context, chanceAt)
  return { after, chance: chance ?? null, repair: chance === undefined ? undefined : repair }
}

/** `1.5 per 100 cycles`, `1 per 66 cycles` or `1.5 %`. */
function readChance(context: Context, at: Located): number | undefined {
  const text = textOf(at)
  if (text === null) return undefined
  const forms = ['1.5 per 100 cycles', '1.5 %']
  const match = /^(.*?)\s+per\s+(?:(\S+)\s+)?cycles?\s*$/.exec(text)
  const scanned = scan(match === null ? text.trimEnd() : match[1]!, 0)
  if (scanned === null || (match === null) !== (scanned.unit === '%')) return fail(context, at, say.badRate(text, forms))
  if (match === null && scanned.end < text.trimEnd().length) return fail(context, at, say.badRate(text, forms))
  const digits = digitsOf(scanned, text)
  if (digits.fault !== null) return fail(context, at, digits.fault.sentence)
  const cycles = match === null ? 100 : match[2] === undefined ? 1 : Number(match[2])
  if (!Number.isSafeInteger(cycles) || cycles < 1) return fail(context, at, say.badRate(text, forms))
  const chance = toNumber(digits.value, 1n, BigInt(cycles))
  if (chance < 0) return fail(context, at, say.negative(text))
  if (chance === 0) return fail(context, at, say.zero(text))
  return chance > 1 ? fail(context, at, say.shareBeyond(text)) : chance
}

function readShortStop(context: Context, entry: Entry, part: Part, chance: number, name: string, line: Line): ShortStop | null {
  const at = child(entry.value, 'chance')!
  if (part.part.kind !== 'station') {
    context.report.add(at, say.chanceAtStation())
    return null
  }
  const station = line.stations[part.part.index]!
  if (station.spec === null || line.products.mix === null) return null
  const mean = meanStay(station.spec, frequencies(line.products))
  if (!(mean > 0)) {
    context.report.add(at, say.chanceWithoutTime(station.name))
    return null
  }
  const meanTimeToFailureSeconds = Number((mean / chance).toPrecision(12))
  if (meanTimeToFailureSeconds > REACH_SECONDS) {
    context.report.add(at, say.chanceBeyondReach(textOf(at)!, station.name))
    return null
  }
  return { name, station: station.name, chancePerCycle: chance, meanWorkSeconds: mean, meanTimeToFailureSeconds }
}

/** How often each variant is made, in any unit. */
export function frequencies(products: Products): number[] {
  const mix = products.mix
  if (mix === null) return products.variants.map(() => 0)
  if (mix.kind === 'random' || mix.kind === 'levelled') return [...mix.shares]
  return products.variants.map((_, variant) => mix.sequence.filter((one) => one === variant).length)
}
