/** Where the time of every station goes: one bar of ten states for each. */
import type { StationState } from '@loopwright/line'
import type { StationShares, SweepCount } from '@loopwright/study'
import type { ChartRow, Figure, WindowWords } from '../draw/figure.ts'
import { formatMinutes, formatShare, percent } from '../table/format.ts'
import { carriersText, frame, type Layer, windowOf } from '../draw/frame.ts'
import { STATE_LOOKS, STATES } from './states.ts'
import { type FieldOf, type Table, tableOf } from '../table/table.ts'
import { fieldName } from '../table/tableFields.ts'

export interface StationTimesOptions extends WindowWords {
  /** states in the key; give those of the whole sweep, so that the key stays when the count changes. Default: those that occur here */
  readonly states?: readonly StationState[]
}

/** one letter or word needs about this many pixels a character */
const PIXELS_PER_CHARACTER = 7
/** bar and the name above it */
const STEP_PIXELS = 44
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
  const rows = segments(count.stations, windowSeconds, per)
  const found = finding(count, per)
  const alt = `Stacked bars, one for each of ${count.stations.length} stations: share of the ${per} in each state. ${found}`
  return {
    spec: frame({
      description: alt,
      height: STEP_PIXELS * Math.max(1, count.stations.length),
      ownColours: true,
      rows,
      layer: layers(options.states ?? statesIn([count]), `Share of the ${per} of ${formatMinutes(windowSeconds)} min, %`),
    }),
    rows,
    swapRows: true,
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

function segments(stations: readonly StationShares[], windowSeconds: number, per: string): ChartRow[] {
  return stations.flatMap(({ name, title, shares }) => {
    let from = 0
    return STATES.flatMap((state): ChartRow[] => {
      const share = shares[state]
      if (share <= 0) return []
      const start = from
      from += share * 100
      const { letter, word } = STATE_LOOKS[state]
      const tip = `${title}: ${state} ${formatShare(share)}, ${formatMinutes(share * windowSeconds)} min of the ${per}`
      const shown = share >= LETTER_FROM_SHARE
      return [
        {
          station: name,
          title,
          state,
          from: start,
          to: from,
          letter: shown ? letter : '',
          word: shown ? word : '',
          wordPixels: word.length * PIXELS_PER_CHARACTER + 6,
          tip,
        },
      ]
    })
  })
}

function layers(states: readonly StationState[], axisTitle: string): Layer[] {
  const y = { field: 'station', type: 'nominal', sort: null, axis: null, scale: { paddingInner: 0.48, paddingOuter: 0.48 } } as const
  const tooltip = { field: 'tip' } as const
  const middle = { field: 'middle', type: 'quantitative' } as const
  const transform = [{ calculate: '(datum.from + datum.to) / 2', as: 'middle' }]
  const letters = { expr: '(datum.to - datum.from) / 100 * width > datum.wordPixels ? datum.word : datum.letter' }
  const waiting = states.some((state) => state.startsWith('waiting'))
  const key = Object.fromEntries(STATES.map((state) => [state, `${STATE_LOOKS[state].letter} · ${state}`]))
  return [
    {
      mark: { type: 'bar', style: 'segment' },
      encoding: {
        y,
        x: {
          field: 'from',
          type: 'quantitative',
          title: axisTitle,
          scale: { domain: [0, 100] },
          axis: { tickCount: 5, grid: false },
        },
        x2: { field: 'to' },
        color: {
          field: 'state',
          type: 'nominal',
          scale: { domain: [...STATES], range: 'category' },
          legend: {
            title: null,
            orient: 'top',
            values: [...states],
            columns: {
              expr: waiting ? 'width < 400 ? 1 : width < 600 ? 2 : width < 900 ? 3 : 5' : 'width < 400 ? 2 : width < 640 ? 3 : 7',
            },
            labelExpr: `${JSON.stringify(key)}[datum.label]`,
          },
        },
        tooltip,
      },
    },
    { transform, mark: { type: 'text', style: ['letters', 'plate'], text: letters, strokeJoin: 'round' }, encoding: { y, x: middle } },
    {
      transform,
      mark: { type: 'text', style: 'letters', text: letters },
      encoding: {
        y,
        x: middle,
        color: { field: 'state', type: 'nominal', scale: { domain: [...STATES], range: 'ordinal' }, legend: null },
        tooltip,
      },
    },
    {
      transform: [{ filter: 'datum.from === 0' }],
      mark: { type: 'text', style: 'words', align: 'left', baseline: 'bottom', dy: -3, limit: { expr: 'width' } },
      encoding: { y: { ...y, bandPosition: 0 }, x: { value: 0 }, text: { field: 'title' }, tooltip: { field: 'title' } },
    },
  ]
}

function finding({ carriers, stations }: Pick<SweepCount, 'carriers' | 'stations'>, per: string): string {
  if (stations.length === 0) return 'There are no stations.'
  const share = (of: StationShares, ...states: StationState[]) => states.reduce((sum, state) => sum + of.shares[state], 0)
  const busy = (of: StationShares) => share(of, 'working', 'handling', 'exchanging')
  const busiest = stations.reduce((best, each) => (busy(each) > busy(best) ? each : best))
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
  const left = shown.filter((state) => !largest.includes(state))
  const field = (state: StationState): FieldOf<StationShares> => [
    fieldName(state),
    `share of the ${per}, 0 … 1, in the state "${state}"`,
    (station) => share(station, state),
  ]
  const hidden = STATES.filter((state) => !shown.includes(state))
  return tableOf<StationShares>({
    caption: `Where the time of each station goes with ${carriersText(carriers)}, % of the ${per} of ${formatMinutes(windowSeconds)} min`,
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
        head: 'longest block,\nmean (min)',
        pageOnly: true,
        text: ({ longestBlockSecondsMean }) => formatMinutes(longestBlockSecondsMean),
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

/** what a state is, where its word does not say it */
const WORDS: readonly (readonly [StationState, string])[] = [
  ['blocked', 'Blocked: done, but no room ahead for the carrier.'],
  ['exchanging', 'Exchanging: one carrier moves out and the next one in.'],
  ['starved', 'Starved: no carrier comes.'],
]

/** A narrow terminal has not all states; the sum is that of all. */
function sumNote(left: readonly StationState[]): string {
  if (left.length === 0) return 'Each row adds up to 100 but for rounding.'
  const names = left.length === 1 ? left[0]! : `${left.slice(0, -1).join(', ')} and ${left.at(-1)!}`
  return `With ${names} each row adds up to 100 but for rounding.`
}

/** letters of a station that a narrow column holds */
const STATION_MAX = 26

/** "S6 Tightness test"; a long one is cut. */
function stationText(name: string, title: string): string {
  const whole = name === title ? name : `${name} ${title}`
  return whole.length <= STATION_MAX ? whole : `${whole.slice(0, STATION_MAX - 1)}…`
}
