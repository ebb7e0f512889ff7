/** Instants of a run that somebody may want to see: the first of each state of a station, the longest stop, a standstill. */
import { formatDuration } from '@loopwright/charts/table'
import { type LineSpec, type RunEnd, type StationState, stationWords } from '@loopwright/line'
import type { Hold, Replay, ReplayMark, StationStretch } from './replay.ts'

/** states that people look for */
const LOOKED_FOR: readonly StationState[] = [
  'blocked',
  'starved',
  'waiting for operator',
  'waiting for product',
  'waiting for receiver',
  'stopped',
]

interface Of extends Pick<Replay, 'stations' | 'holds' | 'made' | 'endSeconds'> {
  readonly end: RunEnd
}

/** In the order in which they are offered. */
export function replayMarks(line: LineSpec, { stations, holds, made, end, endSeconds }: Of): ReplayMark[] {
  const first = (index: number, state: StationState): ReplayMark[] => {
    const found = stations[index]!.find((stretch) => stretch.state === state && stretch.to > stretch.from)
    return found === undefined ? [] : [{ label: `First time ${stationWords(line.stations[index]!)} is ${state}`, seconds: found.from }]
  }
  const stops = holds.filter(({ isBreak }) => !isBreak)
  const longest = longestOf(stops)
  const blocked = stations.flatMap((own, index) => own.filter(({ state }) => state === 'blocked').map((stretch) => ({ index, stretch })))
  const longestBlock = blocked.reduce<(typeof blocked)[number] | null>(
    (best, each) => (best === null || lasts(each.stretch) > lasts(best.stretch) ? each : best),
    null,
  )
  const pause = holds.find(({ isBreak }) => isBreak)
  return [
    ...(end.reason === 'gridlock' ? [{ label: 'Gridlock', seconds: endSeconds }] : []),
    ...(end.reason === 'out of products' ? [{ label: 'Out of products', seconds: endSeconds }] : []),
    ...(longest === null
      ? []
      : [{ label: `Longest stop: ${longest.name}, ${formatDuration(longest.to - longest.from)}`, seconds: longest.from }]),
    ...(longestBlock === null
      ? []
      : [
          {
            label: `Longest block: ${stationWords(line.stations[longestBlock.index]!)}, ${formatDuration(lasts(longestBlock.stretch))}`,
            seconds: longestBlock.stretch.from,
          },
        ]),
    ...(made[0] === undefined ? [] : [{ label: 'First unit', seconds: made[0] }]),
    { label: 'Counting begins', seconds: Math.min(line.window.warmupSeconds, endSeconds) },
    ...(pause === undefined ? [] : [{ label: 'First break', seconds: pause.from }]),
    ...line.stations.flatMap((_, index) => LOOKED_FOR.flatMap((state) => first(index, state))),
  ]
}

const lasts = ({ from, to }: StationStretch): number => to - from

function longestOf(stops: readonly Hold[]): Hold | null {
  return stops.reduce<Hold | null>((best, each) => (best === null || each.to - each.from > best.to - best.from ? each : best), null)
}
