/** Where the time of every station goes: one bar of ten states for each. */
import type { StationState } from '@loopwright/line'
import type { StationShares, SweepCount } from '@loopwright/study'
import type { KeyEntry, Mark } from '../drawing/drawing.ts'
import type { Figure, WindowWords } from '../draw/figure.ts'
import { formatDuration, formatMinutes, formatNumber, formatShare, percent } from '../table/format.ts'
import { namesText } from '../table/namesText.ts'
import { carriersText, windowOf } from '../draw/window.ts'
import { STATE_LOOKS, STATES } from '../draw/states.ts'
import { type FieldOf, type Table, tableOf } from '../table/table.ts'
import { fieldName } from '../table/tableFields.ts'

/** How the chart of station states is told. */
export interface StationTimesOptions extends WindowWords {
  /** states in the key; give those of the whole sweep, so that the key stays when the count changes. Default: those that occur here */
  readonly states?: readonly StationState[]
}

/** bar and the name above it */
const STEP_PIXELS = 44
/** places of the bar within its step, from above */
const [BAR_FROM, BAR_TO] = [0.4, 0.95]
/** and of the name */
const NAME_AT = 0.22
/** narrower segments carry nothing */
const LETTER_FROM_SHARE = 0.04

/**
 * Stacked bars of the time shares, one for each station in line order, states in the order of the engine.
 *
 * @param count     carriers, and the stations' shares (each 0 … 1, summing to 1)
 * @throws RangeError   if the window is not longer than 0 s
 * @example stationTimes({ carriers: 3, stations: [] }, { windowSeconds: 3600 }).finding // => 'There are no stations.'
 */
export function stationTimes(count: Pick<SweepCount, 'carriers' | 'stations'>, options: StationTimesOptions): Figure {
  const { per, windowSeconds } = windowOf(options)
  const found = finding(count, per)
  const alt = `Stacked bars, one for each of ${count.stations.length} stations: share of the ${per} in each state. ${found}`
  return {
    drawing: {
      heightPixels: STEP_PIXELS * Math.max(1, count.stations.length),
      across: { from: 0, to: 100, title: `Share of the ${per} of ${formatMinutes(windowSeconds)} min, %` },
      up: { from: Math.max(1, count.stations.length), to: 0, title: '', ticks: [] },
      key: keyOf(options.states ?? statesIn([count])),
      marks: count.stations.flatMap((station, row) => stationMarks(station, row, windowSeconds, per)),
    },
    finding: found,
    alt,
    readLine: `Each bar is the whole ${per} of one station. Starved: no carrier is there or on its way in. Blocked: its carrier is done and cannot go on. Words and letters stand in parts of 4 % and more.`,
    table: shareTable(count, windowSeconds, per),
  }
}

/**
 * The states that occur anywhere in these counts, in the order of the engine.
 *
 * @example statesIn([]) // => []
 */
export function statesIn(counts: readonly Pick<SweepCount, 'stations'>[]): StationState[] {
  return STATES.filter((state) => counts.some(({ stations }) => stations.some(({ shares }) => shares[state] > 0)))
}

function stationMarks({ name, title, shares }: StationShares, row: number, windowSeconds: number, per: string): Mark[] {
  let from = 0
  const segments = STATES.flatMap((state, index): Mark[] => {
    const share = shares[state]
    if (share <= 0) return []
    const start = from
    from += share * 100
    const { letter, word } = STATE_LOOKS[state]
    return [
      {
        mark: 'area',
        x: [start, from],
        y: [row + BAR_FROM, row + BAR_TO],
        ink: `state ${index}`,
        words: share >= LETTER_FROM_SHARE ? [word, letter] : [],
        wordsInk: `on state ${index}`,
        tip: `${title}: ${state} ${formatShare(share)}, ${formatMinutes(share * windowSeconds)} min of the ${per}`,
      },
    ]
  })
  return [{ mark: 'words', x: 'from', y: row + NAME_AT, text: named(name, title), ink: 'words', beside: '' }, ...segments]
}

/** "S6 Tightness test", also where the title is the name. */
const named = (name: string, title: string): string => (name === title ? name : `${name} ${title}`)

function keyOf(states: readonly StationState[]): KeyEntry[] {
  return states.map((state) => ({ text: `${STATE_LOOKS[state].letter} · ${state}`, sample: 'area', ink: `state ${STATES.indexOf(state)}` }))
}

function finding({ carriers, stations }: Pick<SweepCount, 'carriers' | 'stations'>, per: string): string {
  if (stations.length === 0) return 'There are no stations.'
  const share = (of: StationShares, ...states: StationState[]) => states.reduce((sum, state) => sum + of.shares[state], 0)
  const busy = (of: StationShares) => share(of, 'working', 'handling', 'exchanging')
  const busiest = stations.reduce((best, each) => (busy(each) > busy(best) ? each : best))
  if (busy(busiest) === 0) return `With ${carriersText(carriers)} no station works in the ${per}.`
  const first = `With ${carriersText(carriers)} the busiest station is ${busiest.title}: working ${formatShare(share(busiest, 'working'))} of the ${per}`
  const waits = WAITS.map(([state, words]) => ({ words, share: share(busiest, state) })).sort((a, b) => b.share - a.share)
  const [most] = waits
  return most!.share >= 0.05 ? `${first}, ${most!.words} ${formatShare(most!.share)}.` : `${first}; it hardly ever waits.`
}

/** why a station does not work, in words that a share follows */
const WAITS: readonly (readonly [StationState, string])[] = [
  ['starved', 'without a carrier'],
  ['blocked', 'unable to send its carrier on'],
  ['waiting for operator', 'waiting for an operator'],
  ['waiting for product', 'waiting for a product'],
  ['waiting for receiver', 'waiting for its receiver'],
  ['stopped', 'stopped'],
]

/** states that fit into a terminal beside the station */
const TERMINAL_STATES = 7
/** heads broken where a narrow column needs it */
const HEADS: Partial<Record<StationState, string>> = {
  handling: 'hand-\nling',
  'waiting for operator': 'waits for\noperator',
  'waiting for product': 'waits for\nproduct',
  'waiting for receiver': 'waits for\nreceiver',
  exchanging: 'exchan-\nging',
}

function shareTable({ carriers, stations }: Pick<SweepCount, 'carriers' | 'stations'>, windowSeconds: number, per: string): Table {
  const shown = statesIn([{ stations }])
  const share = ({ shares }: StationShares, state: StationState): number => shares[state]
  const sum = (state: StationState): number => stations.reduce((all, station) => all + share(station, state), 0)
  const largest = [...shown].sort((a, b) => sum(b) - sum(a)).slice(0, TERMINAL_STATES)
  const inHours = stations.some(({ longestBlockSecondsMean }) => longestBlockSecondsMean >= LONG_BLOCK_SECONDS)
  const left = shown.filter((state) => !largest.includes(state))
  const field = (state: StationState): FieldOf<StationShares> => [
    fieldName(state),
    `share of the ${per}, 0 … 1, in the state "${state}"`,
    (station) => share(station, state),
  ]
  const hidden = STATES.filter((state) => !shown.includes(state))
  return tableOf<StationShares>({
    caption: `Where the time of each station goes with ${carriersText(carriers)}, % of the ${per} of ${formatDuration(windowSeconds)}`,
    columns: [
      {
        head: 'Station',
        align: 'left',
        text: ({ name, title }) => stationText(name, title),
        data: [
          ['station', 'name in the scenario', ({ name }) => name],
          ['title', 'title of the station', ({ title }) => title],
        ],
      },
      ...shown.map((state) => ({
        head: HEADS[state] ?? state,
        pageOnly: left.includes(state),
        text: (station: StationShares) => percent(share(station, state)),
        data: [field(state)],
      })),
      {
        head: `longest block,\nmean (${inHours ? 'h' : 'min'})`,
        pageOnly: true,
        text: ({ longestBlockSecondsMean: seconds }) => (inHours ? formatNumber(seconds / 3600, 1) : formatMinutes(seconds)),
        data: [
          [
            'longest_block_s',
            'longest time without a break that the station was blocked, seconds, mean',
            (of) => of.longestBlockSecondsMean,
          ],
          ...hidden.map(field),
        ],
      },
    ],
    rows: stations,
    note: [...WORDS.filter(([state]) => shown.includes(state)).map(([, words]) => words), sumNote(left)].join(' '),
  })
}

/** blocks are told in hours from this on */
const LONG_BLOCK_SECONDS = 36_000

/** what a state is, where its word does not say it */
const WORDS: readonly (readonly [StationState, string])[] = [
  ['blocked', 'Blocked: done, but no room ahead for the carrier.'],
  ['exchanging', 'Exchanging: one carrier moves out and the next one in.'],
  ['starved', 'Starved: no carrier comes.'],
]

/** A narrow terminal has not all states; the sum is that of all. */
function sumNote(left: readonly StationState[]): string {
  if (left.length === 0) return 'Each row adds up to 100 but for rounding.'
  return `With ${namesText(left)} each row adds up to 100 but for rounding.`
}

/** letters of a station that a narrow column holds */
const STATION_MAX = 26

/** "S6 Tightness test"; a long one is cut. */
function stationText(name: string, title: string): string {
  const whole = named(name, title)
  return whole.length <= STATION_MAX ? whole : `${whole.slice(0, STATION_MAX - 1)}…`
}
