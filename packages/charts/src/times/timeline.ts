/** Zones over time: one line for each carrier, thick where it is worked on, grey where it waits to go on. */
import type { CarrierStay } from '@loopwright/study'
import type { Mark } from '../drawing/drawing.ts'
import type { Figure } from '../draw/figure.ts'
import { formatDuration, formatNumber, formatStretch } from '../table/format.ts'
import { carriersText, niceStep } from '../draw/window.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'
import { type Span, splitSpans, type TimelinePause } from './timelinePause.ts'

export type { TimelinePause } from './timelinePause.ts'

/** How the chart of a stretch of a run is told; seconds. */
export interface TimelineOptions {
  /** names of the zones, in travel order */
  readonly zones: readonly string[]
  /** the stretch that is shown, seconds from the start of the run */
  readonly fromSeconds: number
  readonly toSeconds: number
  /** the stretch in words, as on the clock of the day: "08:00 to 08:15". Default: by the clock of the run */
  readonly stretch?: string
  /** clock time of an instant; null: none. Default: minutes of the run */
  readonly clock?: (seconds: number) => string | null
  /** titles of the stations, by zone; '': none. Default: none known */
  readonly places?: readonly string[]
  /** stops and breaks, in any order. Default: none known */
  readonly pauses?: readonly TimelinePause[]
}

/** pixels for one zone */
const ZONE_PIXELS = 18
const ZONE_PIXELS_MANY = 7
const MANY_ZONES = 40

/**
 * A stretch of a run. A carrier that stands is a level line, one that moves a slope; where a lap ends its line begins anew at the other edge.
 *
 * @param stays  of the whole run, or at least of the stretch
 * @throws RangeError  if the stretch has no length
 * @example timeline([], { zones: ['Z01', 'Z02'], fromSeconds: 0, toSeconds: 60 }).table.rows.length // => 0
 */
export function timeline(stays: readonly CarrierStay[], options: TimelineOptions): Figure {
  const { zones, fromSeconds, toSeconds, stretch = formatStretch(fromSeconds, toSeconds) } = options
  if (!(toSeconds > fromSeconds)) throw new RangeError(`a stretch from ${fromSeconds} s to ${toSeconds} s is none`)
  const shown = stays.filter((stay) => stay.zone >= 0 && stay.enterSeconds < toSeconds && (stay.leaveSeconds ?? toSeconds) > fromSeconds)
  const cut = (span: Span): Span[] => {
    const [from, to] = [Math.max(span.from, fromSeconds), Math.min(span.to, toSeconds)]
    return to > from ? [{ ...span, from, to }] : []
  }
  const works = shown.flatMap(({ carrier, zone, works: all }) => all.flatMap(([from, to]) => cut({ carrier, zone, from, to })))
  const waits = shown.flatMap(({ carrier, zone, doneSeconds, leaveSeconds }) =>
    doneSeconds === null ? [] : cut({ carrier, zone, from: doneSeconds, to: leaveSeconds ?? toSeconds }),
  )
  const pauses = (options.pauses ?? []).filter(({ to, from }) => to > fromSeconds && from < toSeconds)
  const [work, wait] = [splitSpans(works, pauses, 'work'), splitSpans(waits, pauses, 'moves')]
  const held = [...work.held, ...wait.held]
  const found = finding(wait.free, zones, stretch)
  const carriers = [...new Set(shown.map(({ carrier }) => carrier))].sort((a, b) => a - b)
  const alt = `Lines of ${carriersText(carriers.length)} through ${zones.length} zones over ${formatDuration(toSeconds - fromSeconds)}. ${found}`
  return {
    drawing: drawingOf({ stays: shown, works: work.free, waits: wait.free, held, pauses }, options),
    finding: found,
    alt,
    readLine: `One line for each carrier. Level: it stands; sloped: it moves. Thick: it is worked on; grey: it is done and waits to go on.${pauses.length === 0 ? '' : ' Shaded: stops and breaks; what they hold has a colour of its own.'}`,
    table: carrierTable(carriers, { stays: shown, works: work.free, waits: wait.free, held }, zones),
  }
}

/** A corner of a line. */
export interface Corner {
  readonly carrier: number
  /** a new one where a lap ends: the line begins anew at the other edge */
  readonly leg: number
  readonly seconds: number
  /** index of the zone; between two where a move is cut */
  readonly zone: number
}

/** Corners of the lines, cut to the stretch; a new leg where the index of the zone falls. */
export function cornersOf(stays: readonly CarrierStay[], fromSeconds: number, toSeconds: number): Corner[] {
  const legs = new Map<number, { leg: number; zone: number; seconds: number }>()
  const corners: Corner[] = []
  const point = (carrier: number, zone: number, seconds: number): void => {
    const last = legs.get(carrier)
    const leg = last === undefined ? 0 : last.leg + (zone < last.zone ? 1 : 0)
    legs.set(carrier, { leg, zone, seconds })
    corners.push({ carrier, leg, seconds, zone })
  }
  for (const { carrier, zone, enterSeconds, restSeconds, leaveSeconds } of stays) {
    if (enterSeconds >= toSeconds || (leaveSeconds ?? toSeconds) <= fromSeconds) continue
    const arrives = restSeconds ?? leaveSeconds
    if (arrives === null) continue
    const last = legs.get(carrier)
    if (last === undefined && enterSeconds < fromSeconds && arrives > fromSeconds && zone > 0) {
      // on its way in when the stretch begins: somewhere between the zone before and this one
      const way = (fromSeconds - enterSeconds) / (arrives - enterSeconds)
      corners.push({ carrier, leg: 0, seconds: fromSeconds, zone: zone - 1 + way })
    }
    if (arrives >= toSeconds) {
      if (last !== undefined && zone === last.zone + 1) {
        const way = (toSeconds - last.seconds) / (arrives - last.seconds)
        corners.push({ carrier, leg: last.leg, seconds: toSeconds, zone: last.zone + way })
      }
      continue
    }
    point(carrier, zone, Math.max(arrives, fromSeconds))
    const leaves = Math.min(leaveSeconds ?? toSeconds, toSeconds)
    if (leaves > Math.max(arrives, fromSeconds)) point(carrier, zone, leaves)
  }
  return corners
}

interface Shown {
  readonly stays: readonly CarrierStay[]
  readonly works: readonly Span[]
  readonly waits: readonly Span[]
  /** of both, where a stop or a break holds them */
  readonly held: readonly Span[]
}

function drawingOf(
  { stays, works, waits, held, pauses }: Shown & { readonly pauses: readonly TimelinePause[] },
  options: TimelineOptions,
): Figure['drawing'] {
  const { zones, fromSeconds, toSeconds, clock, places = [] } = options
  const many = zones.length > MANY_ZONES
  const every = many ? niceStep(zones.length, 20) : 1
  const label = (name: string, zone: number): string => `${name}${places[zone] ? ` ${places[zone]}` : ''}`
  const corners = cornersOf(stays, fromSeconds, toSeconds)
  const lines = new Map<string, (readonly [seconds: number, zone: number])[]>()
  for (const { carrier, leg, seconds, zone } of corners) {
    const key = `${carrier} ${leg}`
    const line = lines.get(key)
    if (line === undefined) lines.set(key, [[seconds, zone]])
    else line.push([seconds, zone])
  }
  const spans = (all: readonly Span[], ink: 'spanWork' | 'spanWait' | 'spanHeld', words: string): Mark[] =>
    all.map(({ carrier, zone, from, to }) => ({
      mark: 'rule',
      x: [from, to],
      y: [zone, zone],
      ink,
      tip: `Carrier ${carrier}, ${label(zones[zone]!, zone)}: ${words} ${formatDuration(to - from)}`,
    }))
  return {
    heightPixels: Math.max(120, zones.length * (many ? ZONE_PIXELS_MANY : ZONE_PIXELS)),
    across: {
      from: fromSeconds,
      to: toSeconds,
      title: clock === undefined ? 'Minutes from the start of the run' : 'Clock time',
      ticks: timeTicks(fromSeconds, toSeconds, clock),
    },
    up: {
      from: zones.length - 0.5,
      to: -0.5,
      title: '',
      ticks: zones.flatMap((name, zone) => (zone % every === 0 ? [{ at: zone, text: label(name, zone) }] : [])),
      grid: true,
    },
    key: [
      { text: 'worked on', sample: 'line', ink: 'spanWork' },
      { text: 'waits to go on', sample: 'line', ink: 'spanWait' },
      ...(held.length > 0 ? [{ text: 'held by a stop or break', sample: 'line', ink: 'spanHeld' } as const] : []),
      ...(pauses.length > 0 ? [{ text: 'stop or break', sample: 'area', ink: 'pause' } as const] : []),
    ],
    marks: [
      ...pauses.flatMap(({ from, to, zones: at, name }): Mark[] => {
        const tip = `${name}: ${formatDuration(to - from)}`
        const x = [from, to] as const
        if (at !== null) return at.map((zone) => ({ mark: 'area', x, y: [zone - 0.45, zone + 0.45], ink: 'pause', tip }))
        return [{ mark: 'area', x, y: ['from', 'to'], ink: 'pause', tip }]
      }),
      ...spans(waits, 'spanWait', 'waits to go on for'),
      ...spans(works, 'spanWork', 'worked on for'),
      ...spans(held, 'spanHeld', 'held by a stop or break for'),
      ...[...lines.values()].map((points): Mark => ({ mark: 'path', points, ink: 'travel' })),
      ...pauses.flatMap(({ from, to, zones: at, name }): Mark[] =>
        at === null ? [nameMark(name, Math.max(from, fromSeconds), Math.min(to, toSeconds))] : [],
      ),
    ],
    rightPixels: 24,
  }
}

/** What stands over the whole line, by its name, where there is room for it. */
function nameMark(name: string, from: number, to: number): Mark {
  return {
    mark: 'words',
    x: (from + to) / 2,
    y: 'to',
    dy: 1,
    edge: 'top',
    align: 'middle',
    text: name,
    room: to - from,
    ink: 'note',
    rim: 'paper',
  }
}

/** Whole minutes of the run, or clock times where there are any. */
function timeTicks(fromSeconds: number, toSeconds: number, clock: TimelineOptions['clock']): { at: number; text: string }[] {
  const step =
    [1, 5, 10, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400].find((each) => (toSeconds - fromSeconds) / each <= 8) ?? 28_800
  const first = Math.ceil(fromSeconds / step)
  const last = Math.floor(toSeconds / step)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => {
    const at = (first + index) * step
    return { at, text: clock?.(at) ?? formatNumber(at / 60, step % 60 === 0 ? 0 : step % 30 === 0 ? 1 : 2) }
  })
}

function finding(waits: readonly Span[], zones: readonly string[], stretch: string): string {
  if (waits.length === 0) return `From ${stretch} no carrier waits to go on.`
  const longest = waits.reduce((most, span) => (span.to - span.from > most.to - most.from ? span : most))
  const byZone = zones.map((_, zone) => sum(waits.filter((span) => span.zone === zone)))
  const most = byZone.indexOf(Math.max(...byZone))
  return `From ${stretch} carriers wait most in ${zones[most]}, ${formatDuration(byZone[most]!)} in all; the longest wait is that of carrier ${longest.carrier} in ${zones[longest.zone]}, ${formatDuration(longest.to - longest.from)}.`
}

const sum = (spans: readonly Span[]): number => spans.reduce((total, { from, to }) => total + to - from, 0)

function carrierTable(carriers: readonly number[], { stays, works, waits, held }: Shown, zones: readonly string[]): Table {
  const of = (spans: readonly Span[], carrier: number): Span[] => spans.filter((span) => span.carrier === carrier)
  const rows = carriers.map((carrier) => {
    const own = of(waits, carrier)
    const longest = own.reduce<Span | null>(
      (most, span) => (most === null || span.to - span.from > most.to - most.from ? span : most),
      null,
    )
    const visited = stays.filter((stay) => stay.carrier === carrier).length
    return { carrier, visited, worked: sum(of(works, carrier)), waited: sum(own), held: sum(of(held, carrier)), longest }
  })
  return tableOf({
    caption: 'Carriers in this stretch',
    columns: [
      {
        head: 'Carrier',
        text: ({ carrier }) => `${carrier}`,
        data: [['carrier', 'number of the carrier, from 0', ({ carrier }) => carrier]],
      },
      { head: 'Zones visited', text: ({ visited }) => `${visited}`, data: [['zones_visited', 'stays in zones', ({ visited }) => visited]] },
      {
        head: 'Worked on',
        text: ({ worked }) => formatDuration(worked),
        data: [['worked_s', 'seconds worked on within the stretch', ({ worked }) => worked]],
      },
      {
        head: 'Waits to go on',
        text: ({ waited }) => formatDuration(waited),
        data: [['waited_s', 'seconds done and not yet gone on, within the stretch', ({ waited }) => waited]],
      },
      {
        head: 'Held',
        text: (row) => formatDuration(row.held),
        data: [['held_s', 'seconds held by a stop or break within the stretch', (row) => row.held]],
      },
      {
        head: 'Longest wait',
        text: ({ longest }) => (longest === null ? '–' : formatDuration(longest.to - longest.from)),
        data: [
          [
            'longest_wait_s',
            'seconds of the longest such wait; empty: none',
            ({ longest }) => (longest === null ? null : longest.to - longest.from),
          ],
        ],
      },
      wordColumn<{ readonly longest: Span | null }>('in', 'longest_wait_zone', 'where that was', ({ longest }) =>
        longest === null ? '–' : zones[longest.zone]!,
      ),
    ],
    rows,
    note: 'Times within the stretch. Worked on: releases too. Held: by a stop or a break.',
  })
}
