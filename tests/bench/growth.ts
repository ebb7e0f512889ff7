/** How the cost of an event grows with zones and with carriers: what is timed, and the charts made of it. */
import { type CostPoint, costGrowth, type Figure } from '@loopwright/charts'
import type { LineSpec } from '@loopwright/line'
import { type Case, replications } from './cases.ts'
import type { BenchDocument, Told } from './document.ts'
import { blockLoop, movesLoop } from './lines.ts'

interface Series {
  readonly name: string
  readonly engine: 'events' | 'recursion'
  readonly line: (zones: number, carriers: number) => LineSpec
}

/** simulated hours of twenty zones; longer lines run the shorter, so that each has about as many events */
const BLOCK_HOURS = 400
const MOVES_HOURS = 150

const moves = (zones: number, carriers: number): LineSpec => movesLoop(zones, carriers, (20 * MOVES_HOURS) / zones)
/** The mix of events is the same at every size: stations in every block that load, work and unload for themselves, or hardly any station. */
const SERIES: readonly Series[] = [
  {
    name: 'event engine, stations everywhere',
    engine: 'events',
    line: (zones, carriers) => blockLoop(zones / 20, (20 * BLOCK_HOURS) / zones, { carriers, each: true }),
  },
  { name: 'event engine, moves alone', engine: 'events', line: moves },
  { name: 'recursion, moves alone', engine: 'recursion', line: moves },
]

const ZONES = [20, 200, 2_000, 20_000]
const ZONES_OF_CARRIERS = 2_000
const CARRIERS = [200, 600, 1_000, 1_400, 1_800]

interface Point {
  readonly size: number
  readonly zones: number
  readonly carriers: number
}
const BY_ZONES = ZONES.map((zones): Point => ({ size: zones, zones, carriers: zones / 2 }))
const BY_CARRIERS = CARRIERS.map((carriers): Point => ({ size: carriers, zones: ZONES_OF_CARRIERS, carriers }))

const partName = ({ name }: Series, { size }: Point): string => `${name}, ${size}`

function parts(points: readonly Point[]): Case['parts'] {
  const all = SERIES.flatMap((series) =>
    points.map((point) => {
      const run = () => replications(series.line(point.zones, point.carriers), series.engine, { warm: 2, timed: 2 })
      return [partName(series, point), run] as const
    }),
  )
  return Object.fromEntries(all)
}

const kind = { byEngine: false, elsewhere: false }
export const GROWTH: Readonly<Record<string, Case>> = {
  'growth by zones': {
    about: `cost per event with ${ZONES.join(', ')} zones, half of them with carriers`,
    ...kind,
    parts: parts(BY_ZONES),
  },
  'growth by carriers': {
    about: `cost per event with ${CARRIERS.join(', ')} carriers on ${ZONES_OF_CARRIERS} zones`,
    ...kind,
    parts: parts(BY_CARRIERS),
  },
}

/** Nanoseconds would tell more of how busy the machine was. */
const UNIT = 'turns of the calibrating loop'

/** The charts of what was timed. */
export function growthFigures(told: BenchDocument): { readonly zones: Figure; readonly carriers: Figure } {
  const points = (name: string, sizes: readonly Point[]): CostPoint[] =>
    SERIES.flatMap((series) =>
      sizes.map((point) => {
        const part = told.cases.find((one) => one.name === name)!.parts![partName(series, point)]!
        const { ratio, ratioSpread } = part.nanosecondsPerEvent as Told
        return { series: series.name, size: point.size, cost: ratio!, least: ratioSpread![0], greatest: ratioSpread![1] }
      }),
    )
  return {
    zones: costGrowth(points('growth by zones', BY_ZONES), { of: 'zones', unit: UNIT, tenfold: true }),
    carriers: costGrowth(points('growth by carriers', BY_CARRIERS), { of: 'carriers', unit: UNIT }),
  }
}
