/** What a line's stops come to before it runs: operating clocks by part, breaks as steps, clears without a timer, and the moves that no stop can touch. (MODEL.md §7) */
import { toGrid } from '@loopwright/kernel'
import { type LineSpec, STORE } from '../spec.ts'
import type { PartList } from '../state/lists.ts'
import type { Stops } from '../state/stops.ts'

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
export function buildBreaks(spec: LineSpec): Pick<Stops, 'breakTimes' | 'breakSteps'> {
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

/**
 * 1 for paths whose clear needs no timer until somebody waits for it, or a stop holds it: not by hand, out of a zone whose transfer does not turn back, and, where the line is no
 * plain loop, that has no transfer before it that is entered only if its exit is clear. Starts ahead of the clock (quickStart.ts) count on such clears: one that a stop can hold
 * has a timer where it is the next zone of a move that none can.
 */
export function plainClears(spec: LineSpec, isLoop: boolean, zoneChanges: Uint8Array): Uint8Array {
  const afterExit = new Set<number>()
  for (const { from, to } of spec.paths) if (!isLoop && spec.zones[from]?.transfer?.enterOnlyIfExitClear === true) afterExit.add(to)
  const never = neverHeld(spec)
  const isCountedOn = new Set(spec.paths.flatMap(({ to }, path) => (never[path] === 1 ? [to] : [])))
  return Uint8Array.from(spec.paths, ({ from, manual }, path) =>
    from === STORE || zoneChanges[from] === 1 || afterExit.has(from) || manual !== null || (never[path] === 0 && isCountedOn.has(from))
      ? 0
      : 1,
  )
}

/** 1 for paths whose move no stop or break can hold, and no operating clock of a zone or section follows. */
export function neverHeld(spec: LineSpec): Uint8Array {
  const stops = new Set<number>()
  let followed = (spec.breaks.length > 0 && !spec.conveyorDuringBreaks) || spec.stations.some(({ safetyStop }) => safetyStop !== null)
  for (const { part, clock } of spec.breakdowns) {
    if (part.kind === 'section' || (part.kind === 'zone' && clock === 'operating')) followed = true
    else if (part.kind !== 'station') stops.add(part.index)
  }
  return Uint8Array.from(spec.paths, ({ from, to, manual }) => (followed || stops.has(from) || stops.has(to) || manual !== null ? 0 : 1))
}
