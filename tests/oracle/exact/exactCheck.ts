/** Lines of which something is exactly known: what the files beside this one hold. */
import { readdirSync, readFileSync } from 'node:fs'

/** `values` or `weights`, `mean`, `cv` … as the kind needs them */
export type ExactTime = number | ({ readonly dist: string } & Readonly<Record<string, unknown>>)

export interface ExactRing {
  readonly zones: number
  readonly carriers: number
  readonly start: 'spread' | readonly number[]
  /** its station swaps the product of every carrier */
  readonly swapZone: number
  readonly tasks: readonly { readonly zone: number; readonly time: ExactTime }[]
  readonly moveSeconds: ExactTime | readonly ExactTime[]
  readonly clearSeconds: 'move' | ExactTime | readonly ExactTime[]
  readonly breakdowns?: readonly {
    readonly zone: number
    readonly clock: 'operating' | 'calendar'
    readonly timeToFailure: ExactTime
    readonly repair: ExactTime
  }[]
}

/** Products that come to a load station; the product leaves the line at the unload station. */
export interface ExactQueue {
  readonly zones: number
  readonly carriers: number
  readonly stations: readonly [{ readonly zone: number; readonly load: ExactTime }, { readonly zone: number; readonly unload: 0 }]
  readonly moveSeconds: 0
  readonly clearSeconds: 0
  readonly supply: { readonly interArrival: ExactTime; readonly queue: 'unlimited' }
}

/** One queue before several servers. */
export interface ExactServers {
  readonly servers: number
  readonly service: ExactTime
  readonly interArrival: ExactTime
}

/** A closed network of single servers with exponential times and unlimited waiting, and a pure delay. */
export interface ExactDelay {
  readonly meanTimes: readonly number[]
  readonly carriers: number
  readonly delaySecondsPerLap: number
}

/** Two machines in whole time slots; both machines' own places count among the places between. */
export interface ExactSlots {
  readonly failureProbability: readonly [number, number]
  readonly repairProbability: readonly [number, number]
  readonly bufferPlaces: number
}

export type ExactModel = ExactRing | ExactQueue | ExactServers | ExactDelay | ExactSlots

export interface ExactCheck {
  readonly family: string
  /** what the family is */
  readonly about: string
  readonly id: string
  readonly model: ExactModel
  readonly quantity: string
  /** of the loop, where the quantity is a spread */
  readonly outputPerSecond?: number
  readonly value: number
  /** value = scale × what the loop gives */
  readonly scale?: number
  readonly tolerance: {
    readonly kind: string
    readonly warmupSeconds: number
    readonly windowSeconds: number
    readonly countWithin: number
  }
  readonly source: string
  readonly note?: string
}

/**
 * All checks of the files beside this one.
 *
 * @param folder  of files like those beside this one; default: these
 */
export function exactChecks(folder = import.meta.dirname): ExactCheck[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .flatMap((name) => {
      const { family, about, checks } = JSON.parse(readFileSync(`${folder}/${name}`, 'utf8')) as {
        family: string
        about: string
        checks: ExactCheck[]
      }
      return checks.map((check) => ({ ...check, family, about }))
    })
}
