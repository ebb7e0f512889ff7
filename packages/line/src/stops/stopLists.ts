/** What a line's stops come to before it runs: operating clocks by part, breaks as steps, and the moves that no stop can touch. (MODEL.md §7) */
import { toGrid } from '@loopwright/kernel'
import type { LineSpec } from '../spec.ts'
import type { Line, PartList } from '../instant/state.ts'

/** Sources on operating time, by station, zone, transfer or section. */
export function listByPart(spec: LineSpec, kind: string, parts: number): PartList {
  const lists: number[][] = Array.from({ length: parts }, () => [])
  spec.breakdowns.forEach((source, k) => {
    if (source.clock === 'operating' && source.part.kind === kind) lists[source.part.index]!.push(k)
  })
  const first = new Int32Array(parts + 1)
  lists.forEach((list, part) => {
    first[part + 1] = first[part]! + list.length
  })
  return { first, items: Int32Array.from(lists.flat()) }
}

/** Begins and ends of the breaks, in order; at one instant ends come first. */
export function buildBreaks(spec: LineSpec): Pick<Line, 'breakTimes' | 'breakSteps'> {
  const steps = spec.breaks.flatMap(({ startSeconds, lengthSeconds }) => {
    const start = toGrid(startSeconds)
    const length = toGrid(lengthSeconds)
    return length === 0
      ? []
      : [
          { time: start, step: 1 },
          { time: start + length, step: -1 },
        ]
  })
  steps.sort((a, b) => a.time - b.time || a.step - b.step)
  return { breakTimes: Float64Array.from(steps, ({ time }) => time), breakSteps: Int8Array.from(steps, ({ step }) => step) }
}

/** 1 for paths whose move no stop can hold, whose zone has no operating clock and no transfer that turns back. */
export function plainClears(spec: LineSpec, changes: readonly boolean[]): Uint8Array {
  const zones = spec.zones.length
  const stops = new Set<number>()
  let followed = (spec.breaks.length > 0 && !spec.conveyorDuringBreaks) || spec.stations.some(({ safetyStop }) => safetyStop !== null)
  for (const { part, clock } of spec.breakdowns) {
    if (part.kind === 'section' || (part.kind === 'zone' && clock === 'operating')) followed = true
    else if (part.kind !== 'station') stops.add(part.index)
  }
  return Uint8Array.from(spec.zones, (_, z) => (followed || changes[z] || stops.has(z) || stops.has((z + 1) % zones) ? 0 : 1))
}
