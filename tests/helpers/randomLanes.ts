/**
 * Random lines of lanes: chains of zones, diverts, merges and spurs, closed or from the store and back, most of them with times from the drive; shared operators, pushes and
 * pulls, arriving products, receivers, inspection and rework, transfers, stops and breaks, each in some of them. Like `generalLine` of the benchmarks, but of any shape.
 */
import { type LineSpec, type PathSpec, STORE, type StationSpec, type TaskSpec, type ZoneSpec } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import seedrandom from 'seedrandom'
import { blockLoop } from '../bench/lines.ts'

/** One line for each text. */
export function randomLanes(seed: string): LineSpec {
  return new Lanes(seed).line()
}

type Writable<T> = { -readonly [K in keyof T]: T[K] }

class Lanes {
  private readonly random: () => number
  private readonly base = blockLoop(1, 1)
  private readonly paths: Writable<PathSpec>[] = []
  private readonly isRound: boolean
  private zones = 0

  constructor(seed: string) {
    this.random = seedrandom.alea(seed)
    this.isRound = this.chance(0.3)
  }

  private int(least: number, most: number): number {
    return least + Math.floor(this.random() * (most - least + 1))
  }

  private chance(probability: number): boolean {
    return this.random() < probability
  }

  private pick<T>(...from: readonly T[]): T {
    return from[this.int(0, from.length - 1)]!
  }

  private time(): Distribution {
    return this.chance(0.3) ? { kind: 'constant', value: this.int(0, 20) } : { kind: 'exponential', mean: this.int(2, 40) }
  }

  private join(from: number, to: number, takes: Partial<PathSpec['takes']> = {}): void {
    const path = this.base.paths[0]!
    this.paths.push({
      ...path,
      from,
      to,
      distanceMetres: this.isRound ? 1 : 1 + this.random(),
      accelerationMetresPerSecondSquared: this.chance(0.15) ? null : 0.5,
      takes: { ...path.takes, ...takes },
    })
  }

  /** @returns  its first and last zone */
  private chain(most: number): [number, number] {
    const first = this.zones
    this.zones += this.int(1, most)
    for (let zone = first + 1; zone < this.zones; zone++) this.join(zone - 1, zone)
    return [first, this.zones - 1]
  }

  /** Two or three lanes beside each other, perhaps with a spur for rejects behind them; returns the last zone. */
  private lanes(from: number): number {
    const ends: number[] = []
    for (let lane = this.int(2, 3); lane > 0; lane--) {
      const [first, last] = this.chain(5)
      const isChosen = ends.length > 0 && this.chance(0.4)
      this.join(
        from,
        first,
        isChosen
          ? { variants: this.chance(0.3) ? [0] : null, load: this.chance(0.3) ? this.pick<'empty' | 'loaded'>('empty', 'loaded') : null }
          : {},
      )
      ends.push(last)
    }
    const [merge, after] = this.chain(4)
    for (const end of ends) this.join(end, merge)
    if (!this.chance(0.3)) return after
    const [spur, spurEnd] = this.chain(3)
    const [next, last] = this.chain(3)
    this.join(after, spur, { rejected: true })
    this.join(after, next)
    this.join(spurEnd, next)
    return last
  }

  private layOut(isOpen: boolean): void {
    let [, last] = this.chain(6)
    for (let block = this.int(1, 3); block > 0; block--) {
      if (this.chance(0.6)) last = this.lanes(last)
      else {
        const [first, end] = this.chain(6)
        this.join(last, first)
        last = end
      }
    }
    if (!isOpen) {
      this.join(last, 0)
      return
    }
    this.join(STORE, 0)
    this.join(last, STORE)
    if (this.chance(0.3)) this.join(STORE, this.int(0, this.zones - 1))
  }

  private zone(index: number): Writable<ZoneSpec> {
    return {
      ...this.base.zones[0]!,
      name: `Z${index}`,
      release: this.chance(0.2) ? 'train' : 'single',
      divert: this.pick<ZoneSpec['divert']>('first', 'alternate', 'free'),
      merge: this.pick<ZoneSpec['merge']>(
        { kind: 'waiting' },
        { kind: 'alternate' },
        { kind: 'priority', from: [this.int(0, this.zones - 1), this.int(0, this.zones - 1)] },
      ),
    }
  }

  private putTransfer(zones: Writable<ZoneSpec>[]): void {
    const at = this.int(0, this.zones - 1)
    zones[at]!.transfer = { liftSeconds: this.int(0, 3), lowerSeconds: this.int(0, 3), enterOnlyIfExitClear: this.chance(0.3) }
    for (const path of this.paths) {
      if (path.from === at && this.chance(0.8)) path.fromPosition = 'high'
      if (path.to === at && this.chance(0.2)) path.toPosition = 'high'
    }
  }

  private stations(count: number, variants: number): StationSpec[] {
    const free = Array.from({ length: this.zones }, (_, zone) => [this.random(), zone] as const).sort(([a], [b]) => a - b)
    const zones = free.slice(0, count).map(([, zone]) => zone)
    return zones
      .sort((a, b) => a - b)
      .map((zone, k) => {
        const seconds = Array.from({ length: variants }, (_, v) => (v > 0 && this.chance(0.3) ? null : this.time()))
        const task: TaskSpec[] = [{ task: k, seconds }]
        return {
          ...this.base.stations[0]!,
          name: `S${k}`,
          title: `S${k}`,
          zone,
          load: k === 0 || this.chance(0.1) ? task : null,
          work: k > 0 && k < count - 1 ? task : null,
          unload: k === count - 1 || this.chance(0.1) ? [] : null,
          accepts: this.pick<StationSpec['accepts']>('good', 'all', 'all'),
          releaseSeconds: this.chance(0.3) ? { kind: 'exponential', mean: 3 } : { kind: 'constant', value: this.pick(0, 0, 2) },
          operatorsNeeded: this.pick(0, 1, 1, 1, 2),
          worksInBreaks: this.chance(0.2),
          receiver: this.chance(0.2) ? { cycleSeconds: this.time(), queue: this.int(0, 2) } : null,
          supply: this.chance(0.1) ? this.supply(`supply/S${k}`, this.pick(null, 2)) : null,
          safetyStop: this.chance(0.05) ? { probability: 0.2, resetSeconds: this.time() } : null,
        }
      })
  }

  private supply(name: string, queueLimit: number | null): LineSpec['supply'] {
    return { name, arrivals: { kind: 'every', seconds: { kind: 'exponential', mean: this.int(5, 60) } }, queueLimit }
  }

  private operators(stations: number): Pick<LineSpec, 'operators' | 'walks'> {
    if (this.chance(0.4)) return { operators: [], walks: [] }
    const all = Array.from({ length: stations }, (_, s) => s)
    const operators = Array.from({ length: this.int(1, 3) }, (_, o) => {
      const covered = all.filter(() => this.chance(0.6))
      return { name: `op${o}`, stations: covered.length > 0 ? covered : [0], start: covered[0] ?? 0 }
    })
    if (this.chance(0.4)) {
      const path = this.pick(...this.paths)
      path.manual = { kind: this.pick<'push' | 'pull'>('push', 'pull'), station: this.int(0, stations - 1) }
      path.moveSeconds = this.chance(0.5) ? { kind: 'exponential', mean: 6 } : { kind: 'constant', value: 5 }
      path.clearSeconds = 'move'
    }
    return { operators, walks: all.slice(1).map((s) => ({ between: [s - 1, s] as const, seconds: this.pick(0, 2, 5) })) }
  }

  private breakdowns(stations: number, zones: readonly ZoneSpec[]): LineSpec['breakdowns'][number][] {
    const transfer = zones.findIndex((zone) => zone.transfer !== null)
    return Array.from({ length: this.chance(0.35) ? this.int(1, 3) : 0 }, (_, k) => {
      const kind = this.pick<'station' | 'zone' | 'section' | 'transfer'>('station', 'zone', 'section', transfer < 0 ? 'zone' : 'transfer')
      const index = { station: this.int(0, stations - 1), zone: this.int(0, this.zones - 1), section: 0, transfer }[kind]
      return {
        name: `B${k}`,
        part: { kind, index },
        clock: this.pick<'calendar' | 'operating'>('calendar', 'operating'),
        timeToFailureSeconds: { kind: 'exponential', mean: this.int(50, 400) } as const,
        repairSeconds: this.time(),
      }
    })
  }

  line(): LineSpec {
    const isOpen = this.chance(0.4)
    this.layOut(isOpen)
    const zones = Array.from({ length: this.zones }, (_, zone) => this.zone(zone))
    if (this.chance(0.4)) for (let k = this.int(1, 3); k > 0; k--) this.putTransfer(zones)
    const count = this.int(2, Math.min(7, this.zones))
    const variants = this.chance(0.5) ? ['a', 'b'] : ['a']
    const stations = this.stations(count, variants.length)
    const people = this.operators(count)
    const inspects = count > 2 && this.chance(0.4)
    const breakdowns = this.breakdowns(count, zones)
    const places = zones.filter(({ transfer }) => transfer?.enterOnlyIfExitClear !== true).length
    const list = Array.from({ length: this.int(3, 40) }, () => this.int(0, variants.length - 1))
    return {
      ...this.base,
      ...people,
      zones,
      paths: this.paths,
      stations,
      sections: [{ name: 'line', zones: zones.map((_, zone) => zone) }],
      tasks: stations.map((_, k) => `T${k}`),
      variants,
      carriers: {
        ...this.base.carriers,
        count: Math.max(1, this.int(1, Math.floor(places * (isOpen ? 1 : 0.7)))),
        start: isOpen && this.chance(0.6) ? 'store' : 'spread',
      },
      mix: this.chance(0.1) ? { kind: 'list', sequence: list } : { kind: 'random', shares: variants.map(() => 1 / variants.length) },
      supply: this.chance(0.5)
        ? { name: 'supply', arrivals: { kind: 'always' }, queueLimit: null }
        : this.supply('supply', this.pick(null, 3)),
      inspections: inspects ? [{ task: 1, rejectProbability: 0.3 }] : [],
      rework: inspects ? [{ task: this.pick(1, 2), only: this.chance(0.5) }] : [],
      breakdowns,
      repairCrews: breakdowns.length > 1 && this.chance(0.3) ? 1 : null,
      breaks: this.chance(0.25) ? [{ startSeconds: this.int(100, 700), lengthSeconds: this.int(10, 200) }] : [],
      conveyorDuringBreaks: this.chance(0.5),
      window: { warmupSeconds: 200, endSeconds: 1200 },
    }
  }
}
