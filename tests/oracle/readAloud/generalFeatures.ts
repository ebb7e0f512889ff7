/** Which features of a line that is no plain loop a run has shown. */
import { type LineSpec, STORE } from '@loopwright/line'
import type { LogEntry } from './eventLog.ts'
import type { ReadAloud } from './readAloud.ts'
import { waysInDiffer, waysOutDiffer } from './world.ts'

type Shows = (line: LineSpec, run: ReadAloud) => boolean

const happens =
  (what: LogEntry['what']): Shows =>
  (_, { log }) =>
    log.some((entry) => entry.what === what)

/** a move start on a path of this kind */
const starts =
  (kind: (line: LineSpec, path: LineSpec['paths'][number]) => boolean): Shows =>
  (line, { log }) =>
    log.some((entry) => entry.what === 'move start' && kind(line, line.paths[entry.path]!))

const isSplit = (line: LineSpec, zone: number): boolean => zone !== STORE && line.paths.filter(({ from }) => from === zone).length > 1
const isMerge = (line: LineSpec, zone: number): boolean => zone !== STORE && line.paths.filter(({ to }) => to === zone).length > 1

export const GENERAL_FEATURES: Readonly<Record<string, Shows>> = {
  'a start out of the store': starts((_, { from }) => from === STORE),
  'a start into the store': starts((_, { to }) => to === STORE),
  'a divert to the first path': starts((line, { from }) => isSplit(line, from) && line.zones[from]!.divert === 'first'),
  'a divert in turn': starts((line, { from }) => isSplit(line, from) && line.zones[from]!.divert === 'alternate'),
  'a divert to a free path': starts((line, { from }) => isSplit(line, from) && line.zones[from]!.divert === 'free'),
  'a merge by priority': starts((line, { to }) => isMerge(line, to) && line.zones[to]!.merge.kind === 'priority'),
  'a merge in turn': starts((line, { to }) => isMerge(line, to) && line.zones[to]!.merge.kind === 'alternate'),
  'a path for variants': starts((_, { takes }) => takes.variants !== null),
  'a path for the empty or the loaded': starts((_, { takes }) => takes.load !== null),
  'a path for a station': starts((_, { takes }) => takes.forStation !== null),
  'a path for rejected products': starts((_, { takes }) => takes.rejected === true),
  'ways in of different positions': starts((line, { to }) => to !== STORE && line.zones[to]!.transfer !== null && waysInDiffer(line, to)),
  'ways out of different positions': starts((line, { from }) => from !== STORE && waysOutDiffer(line, from)),
  'a transfer won in the wrong position': (_, { log }) => log.some((entry) => entry.what === 'change start' && entry.why === 'in'),
  'several sections': ({ sections }) => sections.filter(({ zones }) => zones.length > 0).length > 1,
  'a zone in no section': ({ zones, sections }) => sections.flatMap((section) => section.zones).length < zones.length,
  'a stop of a section': ({ breakdowns }, { log }) =>
    log.some((entry) => entry.what === 'stop begin' && breakdowns[entry.source]!.part.kind === 'section'),
  'a repair that waits for a crew': ({ repairCrews, breakdowns }, { log }) => {
    if (repairCrews === null || repairCrews >= breakdowns.length) return false
    const failed = new Map<number, number>()
    for (const entry of log) {
      if (entry.what === 'stop begin') failed.set(entry.source, entry.t)
      if (entry.what === 'repair start' && failed.get(entry.source)! < entry.t) return true
    }
    return false
  },
  'a safety stop': happens('safety stop begin'),
  'an operator sent': happens('operator sent'),
  'a walk': (_, { log }) => {
    const sent = new Map<number, number>()
    for (const entry of log) {
      if (entry.what === 'operator sent') sent.set(entry.operator, entry.t)
      if (entry.what === 'operator there' && sent.get(entry.operator)! < entry.t) return true
    }
    return false
  },
  'two operators at one station': (line, { log }) =>
    log.some(
      (entry) =>
        entry.what === 'duty start' &&
        line.stations[entry.station]!.operatorsNeeded > 1 &&
        line.operators.some(({ stations }) => stations.includes(entry.station)),
    ),
  'waiting for an operator': (_, { result }) => result.stations.some(({ seconds }) => seconds['waiting for operator'] > 0),
  'a push by a named operator': ({ operators }, { log }) =>
    log.some((entry) => entry.what === 'push start' && entry.operator < operators.length),
  "a push by a station's own operator": ({ operators }, { log }) =>
    log.some((entry) => entry.what === 'push start' && entry.operator >= operators.length),
  'nobody is left to come': (_, { result }) => result.end.unmanned.length > 0,
  'a product arrives': happens('product arrival'),
  'a product is turned away': happens('turned away'),
  'a product waited in the queue': (_, { log }) => log.some((entry) => entry.what === 'taken from queue' && entry.waited > 0),
  'waiting for a product': (_, { result }) => result.stations.some(({ seconds }) => seconds['waiting for product'] > 0),
  'a receiver works': happens('receiver start'),
  'waiting for a receiver': (_, { result }) => result.stations.some(({ seconds }) => seconds['waiting for receiver'] > 0),
  'a product is rejected': happens('reject'),
  'rejected twice': (_, { log }) => {
    const serials = log.flatMap((entry) => (entry.what === 'reject' ? [entry.serial] : []))
    return new Set(serials).size < serials.length
  },
  'a rejected product made good and taken off': (_, { log }) => {
    const rejected = new Set(log.flatMap((entry) => (entry.what === 'reject' ? [entry.serial] : [])))
    return log.some((entry) => entry.what === 'unload' && !entry.rejected && rejected.has(entry.serial))
  },
  'a rejected product taken off': (_, { log }) => log.some((entry) => entry.what === 'unload' && entry.rejected),
}

export function generalFeatures(line: LineSpec, run: ReadAloud): string[] {
  return Object.keys(GENERAL_FEATURES).filter((name) => GENERAL_FEATURES[name]!(line, run))
}
