/** A complete LineSpec of any graph from the little that a test wants to say: a small loop whose paths are replaced. */
import {
  type LineSpec,
  type MergeSpec,
  type PathSpec,
  PLAIN_PATH,
  type Position,
  STORE,
  type TakesSpec,
  type ZoneSpec,
} from '@loopwright/line'
import { seconds, smallLoop, type Time, type Wish } from './smallLoop.ts'

/** A path; times not given come from the drive. Positions at its ends are `low` unless given. */
export interface PathWish {
  readonly from: number | 'store'
  readonly to: number | 'store'
  readonly move?: Time
  readonly clear?: Time
  readonly takes?: Partial<TakesSpec>
  readonly out?: Position
  readonly in?: Position
}

/** `move` and `clear` hold for all paths that have none of their own. */
export interface GraphWish extends Omit<Wish, 'move' | 'clear' | 'packed' | 'start'> {
  readonly paths: readonly PathWish[]
  /** zone of carrier 0, 1 …, or how they start */
  readonly start: readonly (number | 'store')[] | { readonly count: number; readonly rule: 'spread' | 'packed' | 'store' }
  readonly move?: Time
  readonly clear?: Time
  readonly diverts?: Readonly<Record<number, ZoneSpec['divert']>>
  readonly merges?: Readonly<Record<number, MergeSpec>>
}

const place = (end: number | 'store'): number => (end === 'store' ? STORE : end)

export function smallGraph(wish: GraphWish): LineSpec {
  const { move, clear, ...rest } = wish
  const loop = smallLoop({ ...rest, start: [0], odd: true })
  const drive = loop.paths[0]!
  const time = (own: Time | undefined, all: Time | undefined) => ((own ?? all) === undefined ? null : seconds((own ?? all) as Time))
  const paths = wish.paths.map(
    (path): PathSpec => ({
      ...drive,
      from: place(path.from),
      to: place(path.to),
      fromPosition: path.out ?? 'low',
      toPosition: path.in ?? 'low',
      moveSeconds: time(path.move, move),
      clearSeconds: time(path.clear, clear),
      takes: { ...PLAIN_PATH.takes, ...path.takes },
    }),
  )
  const { start } = wish
  return {
    ...loop,
    zones: loop.zones.map((zone, z) => ({
      ...zone,
      divert: wish.diverts?.[z] ?? zone.divert,
      merge: wish.merges?.[z] ?? zone.merge,
    })),
    paths,
    carriers:
      'rule' in start
        ? { ...loop.carriers, count: start.count, start: start.rule }
        : { ...loop.carriers, count: start.length, start: start.map(place) },
  }
}

/** Paths that follow each other: chain(0, 1, 2) leads 0 → 1 → 2. */
export function chain(...places: readonly (number | 'store')[]): PathWish[] {
  return places.slice(1).map((to, k) => ({ from: places[k]!, to }))
}
