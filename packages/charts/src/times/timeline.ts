/** Zones over time: one line for each carrier, thick where it is worked on, grey where it waits to go on. */
import type { CarrierStay } from '@loopwright/study'
import type { ChartRow, Figure } from '../draw/figure.ts'
import { formatDuration, formatStretch } from '../table/format.ts'
import { carriersText, frame, type Layer, niceStep } from '../draw/frame.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'

export interface TimelineOptions {
  /** names of the zones, in travel order */
  readonly zones: readonly string[]
  /** the stretch that is shown, seconds from the start of the run */
  readonly fromSeconds: number
  readonly toSeconds: number
  /** the stretch in words, as on the clock of the day: "08:00 to 08:15". Default: by the clock of the run */
  readonly stretch?: string
}

/** pixels for one zone */
const ZONE_PIXELS = 18
const ZONE_PIXELS_MANY = 7
const MANY_ZONES = 40

interface Span {
  readonly carrier: number
  readonly zone: number
  readonly from: number
  readonly to: number
}

/**
 * A stretch of a run. A carrier that stands is a level line, one that moves a slope; where a lap ends its line begins anew at the other edge.
 *
 * @param stays  of the whole run, or at least of the stretch
 * @throws RangeError  if the stretch has no length
 * @example timeline([], { zones: ['Z01', 'Z02'], fromSeconds: 0, toSeconds: 60 }).rows.length // => 0
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
  const rows = pointsOf(shown, fromSeconds, toSeconds)
  const found = finding(waits, zones, stretch)
  const carriers = [...new Set(shown.map(({ carrier }) => carrier))].sort((a, b) => a - b)
  const alt = `Lines of ${carriersText(carriers.length)} through ${zones.length} zones over ${formatDuration(toSeconds - fromSeconds)}. ${found}`
  return {
    spec: frame({
      description: alt,
      height: Math.max(120, zones.length * (zones.length > MANY_ZONES ? ZONE_PIXELS_MANY : ZONE_PIXELS)),
      rows,
      layer: layers(works, waits, zones, fromSeconds, toSeconds),
    }),
    rows,
    swapRows: false,
    finding: found,
    alt,
    readLine: 'One line for each carrier. Level: it stands; sloped: it moves. Thick: it is worked on; grey: it is done and waits to go on.',
    table: carrierTable(carriers, shown, works, waits, zones),
  }
}

/** Corners of the lines, cut to the stretch; a new leg where the index of the zone falls. */
function pointsOf(stays: readonly CarrierStay[], fromSeconds: number, toSeconds: number): ChartRow[] {
  const legs = new Map<number, { leg: number; zone: number; seconds: number }>()
  const rows: ChartRow[] = []
  const point = (carrier: number, zone: number, seconds: number): void => {
    const last = legs.get(carrier)
    const leg = last === undefined ? 0 : last.leg + (zone < last.zone ? 1 : 0)
    legs.set(carrier, { leg, zone, seconds })
    rows.push({ carrier, line: `${carrier} ${leg}`, minutes: seconds / 60, zone })
  }
  for (const { carrier, zone, enterSeconds, restSeconds, leaveSeconds } of stays) {
    const arrives = restSeconds ?? leaveSeconds
    if (arrives === null) continue
    const last = legs.get(carrier)
    if (last === undefined && enterSeconds < fromSeconds && arrives > fromSeconds && zone > 0) {
      // on its way in when the stretch begins: somewhere between the zone before and this one
      const way = (fromSeconds - enterSeconds) / (arrives - enterSeconds)
      rows.push({ carrier, line: `${carrier} 0`, minutes: fromSeconds / 60, zone: zone - 1 + way })
    }
    if (arrives >= toSeconds) {
      if (last !== undefined && zone === last.zone + 1) {
        const way = (toSeconds - last.seconds) / (arrives - last.seconds)
        rows.push({ carrier, line: `${carrier} ${last.leg}`, minutes: toSeconds / 60, zone: last.zone + way })
      }
      continue
    }
    point(carrier, zone, Math.max(arrives, fromSeconds))
    const leaves = Math.min(leaveSeconds ?? toSeconds, toSeconds)
    if (leaves > Math.max(arrives, fromSeconds)) point(carrier, zone, leaves)
  }
  return rows
}

function layers(works: readonly Span[], waits: readonly Span[], zones: readonly string[], fromSeconds: number, toSeconds: number): Layer[] {
  const [from, to] = [fromSeconds / 60, toSeconds / 60]
  const x = {
    field: 'minutes',
    type: 'quantitative',
    title: 'Minutes from the start of the run',
    scale: { domain: [from, to] as [number, number], nice: false, zero: false },
    axis: { tickCount: 6, labelOverlap: 'greedy', labelFlush: true },
  } as const
  const every = zones.length > MANY_ZONES ? niceStep(zones.length, 20) : 1
  const y = {
    field: 'zone',
    type: 'quantitative',
    title: 'Zone, in travel order',
    scale: { domain: [-0.5, zones.length - 0.5] as [number, number], nice: false, zero: false, reverse: true },
    axis: {
      values: zones.flatMap((_, zone) => (zone % every === 0 ? [zone] : [])),
      labelExpr: `${JSON.stringify(zones)}[datum.value]`,
      grid: true,
    },
  } as const
  const spans = (all: readonly Span[], style: string, words: string): Layer => ({
    data: {
      values: all.map((span) => ({
        minutes: span.from / 60,
        until: span.to / 60,
        zone: span.zone,
        tip: `Carrier ${span.carrier}, ${zones[span.zone]}: ${words} ${formatDuration(span.to - span.from)}`,
      })),
    },
    mark: { type: 'rule', style, clip: true },
    encoding: { x, x2: { field: 'until' }, y, tooltip: { field: 'tip' } },
  })
  return [
    spans(waits, 'spanWait', 'waits to go on for'),
    spans(works, 'spanWork', 'worked on for'),
    {
      mark: { type: 'line', style: 'travel', clip: true },
      encoding: { x, y, detail: { field: 'line' }, order: { field: 'minutes', type: 'quantitative' } },
    },
  ]
}

function finding(waits: readonly Span[], zones: readonly string[], stretch: string): string {
  if (waits.length === 0) return `From ${stretch} no carrier waits to go on.`
  const longest = waits.reduce((most, span) => (span.to - span.from > most.to - most.from ? span : most))
  const byZone = zones.map((_, zone) => sum(waits.filter((span) => span.zone === zone)))
  const most = byZone.indexOf(Math.max(...byZone))
  return `From ${stretch} carriers wait most in ${zones[most]}, ${formatDuration(byZone[most]!)} in all; the longest wait is that of carrier ${longest.carrier} in ${zones[longest.zone]}, ${formatDuration(longest.to - longest.from)}.`
}

const sum = (spans: readonly Span[]): number => spans.reduce((total, { from, to }) => total + to - from, 0)

function carrierTable(
  carriers: readonly number[],
  stays: readonly CarrierStay[],
  works: readonly Span[],
  waits: readonly Span[],
  zones: readonly string[],
): Table {
  const of = (spans: readonly Span[], carrier: number): Span[] => spans.filter((span) => span.carrier === carrier)
  const rows = carriers.map((carrier) => {
    const own = of(waits, carrier)
    const longest = own.reduce<Span | null>(
      (most, span) => (most === null || span.to - span.from > most.to - most.from ? span : most),
      null,
    )
    const visited = stays.filter((stay) => stay.carrier === carrier).length
    return { carrier, visited, worked: sum(of(works, carrier)), waited: sum(own), longest }
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
    note: 'Times within the stretch. Worked on: releases too, also while held by a stop.',
  })
}
