/** A standstill as a picture: the zones that wait for each other, one below the other, and the last one's wait for the first. */
import type { Standstill } from '@loopwright/study'
import type { Mark } from '../drawing/drawing.ts'
import type { Figure } from '../draw/figure.ts'
import { formatDuration } from '../table/format.ts'
import { namesText } from '../table/namesText.ts'
import { tableOf, wordColumn } from '../table/table.ts'

/** what the picture calls a zone */
export interface WaitingZone {
  readonly name: string
  /** null: no station */
  readonly station: string | null
}

/** zones drawn before a gap; the last ones stand below it */
const DRAWN_MAX = 24
const ROW_PIXELS = 26
/** pixels from the left: the way back, the squares, the words */
const [BACK_X, MARK_X, WORDS_X] = [10, 36, 52]

/**
 * A standstill as a picture: the zones that wait for each other, one below the other.
 *
 * @param standstill  with a circle of at least two zones
 * @param zones       of the line, by index
 * @param atSeconds   when it stood still
 * @throws RangeError if there is no circle
 * @example waitingCircle({ reason: 'too many carriers', circle: [0, 1], behind: [], merge: null, unmanned: [], understaffed: [] }, [{ name: 'Z1', station: null }, { name: 'Z2', station: null }], 60).finding // => 'After 60 s the line stands still, for 2 zones wait for each other in a circle: there are too many carriers: every place to stand on the way round is taken.'
 */
export function waitingCircle(standstill: Standstill, zones: readonly WaitingZone[], atSeconds: number): Figure {
  const { circle, behind, merge } = standstill
  if (circle.length < 2) throw new RangeError('a standstill without a circle cannot be drawn as one')
  const after = (k: number): WaitingZone => zones[circle[(k + 1) % circle.length]!]!
  const shown = circle.length <= DRAWN_MAX ? circle.map((_, k) => k) : [...Array(DRAWN_MAX - 2).keys(), circle.length - 1]
  const gap = circle.length > DRAWN_MAX
  const rows = shown.map((k, at) => {
    const zone = zones[circle[k]!]!
    const y = gap && k === circle.length - 1 ? at + 1 : at
    return { y, words: zoneWords(zone, after(k)), isMerge: circle[k] === merge }
  })
  const last = rows.at(-1)!.y
  const found = finding(standstill, zones, atSeconds)
  const alt = `${circle.length} zones one below the other, each waits for the next, the last for the first. ${found}`
  const left = circle.length - shown.length
  return {
    drawing: drawingOf(rows, last, gap ? { y: last - 1, words: `… ${left} more zones, each waits for the next …` } : null),
    finding: found,
    alt,
    readLine: 'Each zone holds a carrier that waits for the zone below it; the last one waits for the first.',
    table: tableOf<number>({
      caption: 'Who waits for whom',
      columns: [
        wordColumn('Zone', 'zone', 'name of the zone', (zone) => zones[zone]!.name),
        wordColumn('Station', 'station', 'station in it', (zone) => zones[zone]!.station ?? '–'),
        wordColumn('Waits for', 'waits_for', 'the zone that its carrier waits for', (_, k) => after(k).name),
      ],
      rows: circle,
      note: behind.length === 0 ? null : `Behind the circle ${behind.length === 1 ? 'waits' : 'wait'} ${names(behind, zones)}.`,
    }),
  }
}

function zoneWords({ name, station }: WaitingZone, next: WaitingZone): string {
  return `${station === null ? name : `${name} ${station}`} waits for ${next.name}`
}

interface Row {
  readonly y: number
  readonly words: string
  readonly isMerge: boolean
}

/** The level axis counts pixels, from the left edge. */
function drawingOf(rows: readonly Row[], last: number, gap: { readonly y: number; readonly words: string } | null): Figure['drawing'] {
  const words = (y: number, text: string, ink: 'words' | 'strong' | 'note'): Mark => ({
    mark: 'words',
    x: 'from',
    y,
    dx: WORDS_X,
    text,
    ink,
  })
  return {
    heightPixels: (last + 1) * ROW_PIXELS,
    across: { from: 0, to: 1, title: '', ticks: [] },
    up: { from: last + 0.5, to: -0.5, title: '', ticks: [] },
    marks: [
      ...rows.flatMap(({ y, words: said, isMerge }): Mark[] => [
        { mark: 'dot', x: 'from', y, dx: MARK_X, ink: 'openDot', shape: 'square', radius: 6, tip: said },
        words(y, said, isMerge ? 'strong' : 'words'),
      ]),
      ...Array.from(
        { length: last },
        (_, at): Mark => ({ mark: 'dot', x: 'from', y: at + 0.5, dx: MARK_X, ink: 'dot', shape: 'down', radius: 4 }),
      ),
      ...(gap === null ? [] : [words(gap.y, gap.words, 'note')]),
      ...[last, 0].map((y): Mark => ({ mark: 'rule', x: ['from', 'from'], y: [y, y], dx: [BACK_X, MARK_X - 8], ink: 'travel' })),
      { mark: 'rule', x: ['from', 'from'], y: [0, last], dx: [BACK_X, BACK_X], ink: 'travel' },
      { mark: 'dot', x: 'from', y: 0, dx: MARK_X - 10, ink: 'dot', shape: 'right', radius: 4 },
    ],
  }
}

function finding({ reason, circle, behind, merge, unmanned }: Standstill, zones: readonly WaitingZone[], atSeconds: number): string {
  const why =
    reason === 'merge fills its own exit'
      ? `${zones[merge!]!.name}, where two ways meet, fills its own exit: what came in there waits for a zone that waits for it.`
      : `there are too many carriers: every place to stand on the way round is taken.`
  const more = behind.length === 0 ? '' : ` Behind it ${behind.length === 1 ? 'waits' : 'wait'} ${names(behind, zones)}.`
  const nobody =
    unmanned.length === 0
      ? ''
      : ` Apart from it ${names(unmanned, zones)} ${unmanned.length === 1 ? 'waits' : 'wait'} for operators who are never free.`
  return `After ${formatDuration(atSeconds)} the line stands still, for ${circle.length} zones wait for each other in a circle: ${why}${more}${nobody}`
}

const names = (of: readonly number[], zones: readonly WaitingZone[]): string =>
  namesText(
    of.map((zone) => zones[zone]!.name),
    8,
  )
