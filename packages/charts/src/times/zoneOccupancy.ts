/** How full every zone is, in travel order, and what its carrier is doing there. */
import type { ZONE_STATES } from '@loopwright/line'
import type { SweepCount, ZoneShares } from '@loopwright/study'
import type { Ink } from '../drawing/ink.ts'
import type { Mark } from '../drawing/drawing.ts'
import type { Figure, WindowWords } from '../draw/figure.ts'
import { formatShare, percent } from '../table/format.ts'
import { carriersText, windowOf } from '../draw/window.ts'
import { type FieldOf, type Table, tableOf, wordColumn } from '../table/table.ts'
import { fieldName } from '../table/tableFields.ts'

/** How the chart of occupied zones is told. */
export interface ZoneOccupancyOptions extends WindowWords {
  /** what is in the zones, in travel order; default: nothing known */
  readonly places?: readonly ZonePlace[]
  /** another count, marked by strokes where its bars end. Default: none */
  readonly ghost?: Pick<SweepCount, 'carriers' | 'zones'>
}

/** A zone, and what stands in it. */
export interface ZonePlace {
  /** title of the station; null: none */
  readonly station: string | null
  readonly transfer: boolean
}

const ZONES: typeof ZONE_STATES = ['free', 'claimed', 'working', 'blocked', 'other', 'vacating', 'stopped']
const PARTS = ['worked on', 'waiting', 'coming in, or stopped'] as const
type Part = (typeof PARTS)[number]
const INKS: Readonly<Record<Part, Ink>> = { 'worked on': 'work', waiting: 'wait', 'coming in, or stopped': 'move' }
/** pixels of a zone; of each where there are many */
const [ROW_PIXELS, ROW_PIXELS_MANY, MANY] = [18, 8, 60]

/**
 * Horizontal bars, one for each zone: share of the window with a carrier in it, cut into worked on, waiting, and the rest.
 *
 * @param count     carriers, and the zones in travel order
 * @throws RangeError   if the window is not longer than 0 s
 * @example zoneOccupancy({ carriers: 3, zones: [] }, { windowSeconds: 3600 }).finding // => 'There are no zones.'
 */
export function zoneOccupancy(count: Pick<SweepCount, 'carriers' | 'zones'>, options: ZoneOccupancyOptions): Figure {
  const { per } = windowOf(options)
  const places = count.zones.map((_, index) => options.places?.[index] ?? { station: null, transfer: false })
  const labels = count.zones.map(({ name }, index) => [name, placeText(places[index]!)].filter((part) => part !== '').join(' '))
  const found = finding(count, places, per)
  const alt = `Bars, one for each of ${count.zones.length} zones in travel order: share of the ${per} with a carrier in the zone. ${found}`
  return {
    drawing: {
      heightPixels: Math.max(60, count.zones.length * (count.zones.length > MANY ? ROW_PIXELS_MANY : ROW_PIXELS)),
      across: { from: 0, to: 100, title: `Share of the ${per}, %`, grid: true },
      up: { from: Math.max(1, count.zones.length), to: 0, title: '', ticks: labels.map((text, index) => ({ at: index + 0.5, text })) },
      key: PARTS.map((part) => ({ text: part, sample: 'area', ink: INKS[part] })),
      marks: [
        ...count.zones.flatMap((zone, row) => bars(zone, row, labels[row]!)),
        ...(options.ghost?.zones ?? []).map((zone, row): Mark => {
          const full = zone.occupancyMean * 100
          return { mark: 'rule', x: [full, full], y: [row + 0.05, row + 0.95], ink: 'ghost' }
        }),
      ],
    },
    finding: found,
    alt,
    readLine: `From top to bottom in travel order. Where the waiting part is long there is a queue; what it waits for lies below it. All bars together make the number of carriers.${ghostWords(options.ghost)}`,
    table: zoneTable(count, places, per),
  }
}

function bars(zone: ZoneShares, row: number, label: string): Mark[] {
  const lengths = split(zone)
  let from = 0
  return PARTS.map((part, index) => {
    const start = from
    from += lengths[index]! * 100
    return {
      mark: 'area',
      x: [start, from],
      y: [row + 0.14, row + 0.86],
      ink: INKS[part],
      tip: `${label}: ${part} ${formatShare(lengths[index]!)}`,
    }
  })
}

/** by PARTS */
function split({ occupancyMean, shares }: ZoneShares): [number, number, number] {
  const { working } = shares
  const waiting = shares.blocked + shares.other
  return [working, waiting, Math.max(0, occupancyMean - working - waiting)]
}

/** What the strokes are. */
function ghostWords(ghost: ZoneOccupancyOptions['ghost']): string {
  return ghost === undefined ? '' : ` Strokes: where the bars end with ${carriersText(ghost.carriers)}.`
}

function placeText({ station, transfer }: ZonePlace): string {
  return station ?? (transfer ? 'transfer' : '')
}

function finding({ carriers, zones }: Pick<SweepCount, 'carriers' | 'zones'>, places: readonly ZonePlace[], per: string): string {
  if (zones.length === 0) return 'There are no zones.'
  const waits = zones.map((zone) => split(zone)[1])
  const worst = waits.indexOf(Math.max(...waits))
  if (waits[worst]! < 0.05)
    return `With ${carriersText(carriers)} no zone holds a waiting carrier for more than 5 % of the ${per}: there are no queues.`
  const ahead = [...places.keys()].map((step) => (worst + step) % zones.length).find((zone) => places[zone]!.station !== null)
  const where = ahead === undefined ? '' : ahead === worst ? ', at ' : ', on the way to '
  const title = ahead === undefined ? '' : places[ahead]!.station!
  return `With ${carriersText(carriers)} the longest waits are in ${zones[worst]!.name}${where}${title}: ${formatShare(waits[worst]!)} of the ${per}.`
}

function zoneTable({ carriers, zones }: Pick<SweepCount, 'carriers' | 'zones'>, places: readonly ZonePlace[], per: string): Table {
  const place = (index: number): string => placeText(places[index]!) || 'storage'
  return tableOf<ZoneShares>({
    caption: `Zones with ${carriersText(carriers)}, % of the ${per}`,
    columns: [
      wordColumn('Zone', 'zone', 'name of the zone', ({ name }) => name),
      wordColumn('Place', 'place', 'station, transfer or storage', (_, index) => place(index)),
      {
        head: 'With a carrier (%)',
        text: ({ occupancyMean }) => percent(occupancyMean),
        data: [['occupancy_mean', `mean number of carriers in the zone, 0 … 1`, ({ occupancyMean }) => occupancyMean]],
      },
      { head: 'Worked on (%)', text: (zone) => percent(split(zone)[0]), data: [] },
      {
        head: 'Waiting (%)',
        text: (zone) => percent(split(zone)[1]),
        data: [['waiting', `share of the ${per}, 0 … 1, with a carrier that waits: "blocked" and "other"`, (zone) => split(zone)[1]]],
      },
      {
        head: 'Coming in, or stopped (%)',
        text: (zone) => percent(split(zone)[2]),
        data: [
          [
            'coming_in_or_stopped',
            `share of the ${per}, 0 … 1, with a carrier that neither is worked on nor waits`,
            (zone) => split(zone)[2],
          ],
          ...ZONES.map(
            (state): FieldOf<ZoneShares> => [
              fieldName(state),
              `share of the ${per}, 0 … 1, in the state "${state}"`,
              ({ shares }) => shares[state],
            ],
          ),
        ],
      },
    ],
    rows: zones,
    note: 'A carrier counts from the start of its move in to the start of its move out.',
  })
}
