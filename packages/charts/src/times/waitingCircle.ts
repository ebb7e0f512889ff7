/** A standstill as a picture: the zones that wait for each other, one below the other, and the last one's wait for the first. */
import type { Standstill } from '@loopwright/study'
import type { Figure } from '../draw/figure.ts'
import { formatDuration } from '../table/format.ts'
import { frame, type Layer } from '../draw/frame.ts'
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
 * @param standstill  with a circle of at least two zones
 * @param zones       of the line, by index
 * @param atSeconds   when it stood still
 * @throws RangeError if there is no circle
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
    return { y, zone: zone.name, words: zoneWords(zone, after(k)), isMerge: circle[k] === merge, tip: zoneWords(zone, after(k)) }
  })
  const last = rows.at(-1)!.y
  const found = finding(standstill, zones, atSeconds)
  const alt = `${circle.length} zones one below the other, each waits for the next, the last for the first. ${found}`
  const left = circle.length - shown.length
  return {
    spec: frame({
      description: alt,
      height: (last + 1) * ROW_PIXELS,
      rows,
      layer: layers(last, gap ? { y: last - 1, words: `… ${left} more zones, each waits for the next …` } : null),
    }),
    rows,
    swapRows: false,
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

function layers(last: number, gap: { readonly y: number; readonly words: string } | null): Layer[] {
  const scale = { domain: [-0.5, last + 0.5] as [number, number], nice: false, zero: false, reverse: true }
  const y = { field: 'y', type: 'quantitative', scale, axis: null } as const
  const steps = Array.from({ length: last }, (_, at) => ({ y: at + 0.28, until: at + 0.66 }))
  const data = (values: object[]): Pick<Layer, 'data'> => ({ data: { values } })
  const rule = (values: object[], x: number, x2: number | null): Layer => ({
    ...data(values),
    mark: { type: 'rule', style: 'travel' },
    encoding: x2 === null ? { x: { value: x }, y, y2: { field: 'until' } } : { x: { value: x }, x2: { value: x2 }, y },
  })
  const head = (values: object[], x: number, shape: string): Layer => ({
    ...data(values),
    mark: { type: 'point', style: 'meanDot', shape },
    encoding: { x: { value: x }, y },
  })
  const words = (style: string, test: string): Layer => ({
    transform: [{ filter: test }],
    mark: { type: 'text', style, align: 'left', baseline: 'middle' },
    encoding: { x: { value: WORDS_X }, y, text: { field: 'words' } },
  })
  return [
    rule(steps, MARK_X, null),
    head(
      steps.map(({ until }) => ({ y: until })),
      MARK_X,
      'triangle-down',
    ),
    rule([{ y: last }, { y: 0 }], BACK_X, MARK_X - 10),
    rule([{ y: 0, until: last }], BACK_X, null),
    head([{ y: 0 }], MARK_X - 11, 'triangle-right'),
    {
      mark: { type: 'point', style: 'countPale', shape: 'square', filled: true, size: 130, opacity: 1 },
      encoding: { x: { value: MARK_X }, y, tooltip: { field: 'tip' } },
    },
    words('words', '!datum.isMerge'),
    words('wordsStrong', 'datum.isMerge'),
    ...(gap === null
      ? []
      : [
          {
            ...data([gap]),
            mark: { type: 'text', style: 'note', align: 'left', baseline: 'middle' },
            encoding: { x: { value: WORDS_X }, y, text: { field: 'words' } },
          } as Layer,
        ]),
  ]
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

function names(of: readonly number[], zones: readonly WaitingZone[]): string {
  const all = of.map((zone) => zones[zone]!.name)
  if (all.length > 8) return `${all.slice(0, 8).join(', ')} and ${all.length - 8} more`
  return all.length === 1 ? all[0]! : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`
}
