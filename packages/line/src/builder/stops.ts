/** Stops, sections and breaks of a sketch: each stop becomes one source for each part that it names. */
import { distributionMean } from '@loopwright/stats'
import { nearest } from '../check/nearest.ts'
import { sentences as say } from '../check/sentences.ts'
import { wholeLine } from '../build/plain.ts'
import type { BreakdownPart, BreakdownSpec, BreakSpec, SectionSpec, ZoneSpec } from '../spec.ts'
import type { Report } from './report.ts'
import type { LineSketch } from './sketch.ts'
import { checkName, listed, type Names, namesOf, refer, referAll, time, duration } from './values.ts'

export function sectionsOf(report: Report, { sections }: LineSketch, zones: Names): readonly SectionSpec[] {
  if (sections === undefined) return wholeLine(zones.list.length)
  const taken = new Set<number>()
  return Object.entries(sections).map(([name, given]) => {
    const path = `sections.${name}`
    checkName(report, path, name)
    const inside = referAll(report, path, given, zones)
    for (const zone of inside) {
      if (taken.has(zone)) report.add(path, say.sectionTwice(zones.list[zone]!))
      taken.add(zone)
    }
    return { name, zones: inside.sort((a, b) => a - b) }
  })
}

/** What a stop can name. */
export interface StopParts {
  readonly zones: readonly ZoneSpec[]
  readonly zoneNames: Names
  readonly stations: Names
  readonly sections: readonly SectionSpec[]
}

interface NamedPart {
  readonly name: string
  readonly part: BreakdownPart
}

export function breakdownsOf(report: Report, { stops = {} }: LineSketch, line: StopParts): BreakdownSpec[] {
  const seen = new Set<string>()
  return Object.entries(stops).flatMap(([key, stop]) => {
    const path = `stops.${key}`
    checkName(report, path, key)
    const several = typeof stop.at !== 'string' || stop.at.startsWith('every ')
    if (stop.at.length === 0) report.add(`${path}.at`, say.listEmpty())
    const parts = listed(stop.at).flatMap((word) => partsOf(report, `${path}.at`, word, line))
    const after = time(report, `${path}.after`, stop.after)
    if (distributionMean(after) === 0) report.add(`${path}.after`, say.certainStop())
    const lasts = time(report, `${path}.lasts`, stop.lasts)
    return parts.map(({ part, name: of }): BreakdownSpec => {
      const name = several ? `${key} ${of}` : key
      if (seen.has(name)) report.add(path, say.duplicateName('stops', name))
      seen.add(name)
      return { name, part, clock: stop.clock ?? 'operating', timeToFailureSeconds: after, repairSeconds: lasts }
    })
  })
}

/** `S6`, `Z05`, `line`, `transfer Z09`, `every station` … */
function partsOf(report: Report, path: string, word: string, line: StopParts): NamedPart[] {
  const { zones, zoneNames, stations } = line
  const sections = namesOf(
    line.sections.map(({ name }) => name),
    (name, _, known) => say.unknownSection(name, known),
  )
  const listOf = { station: stations, zone: zoneNames, transfer: zoneNames, section: sections }
  const part = (kind: keyof typeof listOf, name: string): NamedPart[] => {
    const index = refer(report, path, name, listOf[kind])
    if (index === null) return []
    if (kind === 'transfer' && zones[index]?.transfer === null) report.add(path, say.noTransferThere(name))
    return [{ name, part: { kind, index } }]
  }
  if (word.startsWith('every ')) {
    const kind = word.slice('every '.length).trim()
    if (kind !== 'station' && kind !== 'zone' && kind !== 'transfer') {
      report.add(path, say.unknownPart(word, nearest(word, EVERY)))
      return []
    }
    const names = kind === 'transfer' ? zoneNames.list.filter((_, zone) => zones[zone]!.transfer !== null) : listOf[kind].list
    if (names.length === 0) report.add(path, say.nobodyThere(word))
    return names.flatMap((name) => part(kind, name))
  }
  const zone = zoneNames.index.get(word)
  const meanings = [
    ...(sections.index.has(word) ? [word === 'line' ? 'line' : `section ${word}`] : []),
    ...(stations.index.has(word) ? [`station ${word}`] : []),
    ...(zone === undefined ? [] : [`zone ${word}`]),
    ...(zone === undefined || zones[zone]!.transfer === null ? [] : [`transfer ${word}`]),
  ]
  if (meanings.length > 1) report.add(path, say.partAmbiguous(word, meanings))
  if (sections.index.has(word)) return part('section', word)
  if (stations.index.has(word)) return part('station', word)
  if (zone !== undefined) return part('zone', word)
  const [, kind, name] = /^(station|zone|transfer|section)\s+(.+)$/.exec(word) ?? []
  if (kind !== undefined) return part(kind as keyof typeof listOf, name!)
  report.add(path, say.unknownPart(word, nearest(word, [...stations.list, ...zoneNames.list, ...sections.list, ...EVERY])))
  return []
}

const EVERY = ['every station', 'every zone', 'every transfer']

export function breaksOf(report: Report, { breaks = [] }: LineSketch): BreakSpec[] {
  return breaks.map(({ after, lasts }, k) => {
    const before = breaks[k - 1]
    if (before !== undefined && after < before.after + before.lasts) report.add(`breaks[${k}].after`, say.breaksOverlap())
    return {
      startSeconds: duration(report, `breaks[${k}].after`, after, 'zero'),
      lengthSeconds: duration(report, `breaks[${k}].lasts`, lasts, 'above zero'),
    }
  })
}
