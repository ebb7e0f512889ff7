/** Stops and waiting of real shifts beside the model: how often, how long, and where carriers are missing or cannot leave. */

/** A stop as it was counted. */
export interface CountedStop {
  /** as the scenario calls it */
  readonly stop: string
  readonly count: number
  /** of all of them together */
  readonly minutes: number
  /** shifts in which they were counted, ≥ 1 */
  readonly shifts: number
}

/** The same stop in the model, mean of a shift. */
export interface ModelStop {
  readonly stop: string
  readonly count: number
  readonly minutes: number
}

/** A stop beside the model. */
export interface StopDeviation extends CountedStop {
  /** in so many shifts */
  readonly modelCount: number
  /** minutes of one; null: none was counted */
  readonly minutesEach: number | null
  /** null: the model has none */
  readonly modelMinutesEach: number | null
  /** counted over model; null: the model has none */
  readonly countRatio: number | null
  /** length counted over that of the model; null: one of the two has none */
  readonly lengthRatio: number | null
  /** shown: more than 3 standard errors and a fifth */
  readonly countDiffers: boolean
  readonly lengthDiffers: boolean
}

/** a difference that is shown: standard errors, and share */
const SHOWN = { errors: 3, share: 0.2 }

/**
 * Stops that come more or less often, or last longer or shorter, than in the model; what costs most minutes a shift more than in the model comes first.
 *
 * @param model  mean of a simulated shift, by the names of the scenario
 * @throws RangeError  for a stop that the model does not have, or counts that cannot be
 * @see counts as of a Poisson process, √n for their error; lengths as exponential ones, mean/√n (own rule: 3 standard errors and a fifth, no source)
 * @example stopDeviations([{ stop: 'jam', count: 40, minutes: 120, shifts: 10 }], [{ stop: 'jam', count: 2, minutes: 6 }])[0].countDiffers // => true
 */
export function stopDeviations(counted: readonly CountedStop[], model: readonly ModelStop[]): StopDeviation[] {
  const found = counted.map((one): StopDeviation => {
    const own = model.find(({ stop }) => stop === one.stop)
    if (own === undefined)
      throw new RangeError(`the model has no stop "${one.stop}"; it has ${model.map(({ stop }) => `"${stop}"`).join(', ') || 'none'}`)
    if (!(Number.isInteger(one.count) && one.count >= 0 && one.minutes >= 0 && Number.isInteger(one.shifts) && one.shifts >= 1))
      throw new RangeError(`"${one.stop}": whole counts and minutes from 0 on, whole shifts from 1 on`)
    const modelCount = own.count * one.shifts
    const modelMinutesEach = own.count === 0 ? null : own.minutes / own.count
    const minutesEach = one.count === 0 ? null : one.minutes / one.count
    const countRatio = modelCount === 0 ? null : one.count / modelCount
    const lengthRatio = minutesEach === null || modelMinutesEach === null || modelMinutesEach === 0 ? null : minutesEach / modelMinutesEach
    return {
      ...one,
      modelCount,
      minutesEach,
      modelMinutesEach,
      countRatio,
      lengthRatio,
      countDiffers:
        countRatio === null
          ? one.count > 0
          : Math.abs(countRatio - 1) > SHOWN.share && Math.abs(one.count - modelCount) > SHOWN.errors * Math.sqrt(modelCount),
      lengthDiffers:
        lengthRatio !== null && Math.abs(lengthRatio - 1) > SHOWN.share && Math.abs(lengthRatio - 1) * Math.sqrt(one.count) > SHOWN.errors,
    }
  })
  const more = ({ minutes, shifts, modelCount, modelMinutesEach }: StopDeviation): number =>
    minutes / shifts - (modelCount * (modelMinutesEach ?? 0)) / shifts
  return found.toSorted((a, b) => Math.abs(more(b)) - Math.abs(more(a)))
}

/** How long a station waited, as it was measured. */
export interface MeasuredWait {
  readonly station: string
  readonly state: 'blocked' | 'starved'
  /** of the shift, 0 … 1 */
  readonly share: number
}

/** Waiting of a station beside the model. */
export interface WaitDeviation extends MeasuredWait {
  readonly modelShare: number
  /** more than WAIT_SHOWN apart */
  readonly differs: boolean
}

/** Waits are told apart from so many points on (own rule, no source). */
const WAIT_SHOWN = 0.03

/**
 * Stations that wait for others longer or shorter than in the model, the largest difference first.
 *
 * @param model  share of the shift, 0 … 1; null: there is no such station
 * @throws RangeError  for a station that the model does not have, or a share beyond 0 … 1
 * @example waitDeviations([{ station: 'S4', state: 'blocked', share: 0.12 }], () => 0.02)[0].differs // => true
 */
export function waitDeviations(
  measured: readonly MeasuredWait[],
  model: (station: string, state: MeasuredWait['state']) => number | null,
): WaitDeviation[] {
  const found = measured.map((one): WaitDeviation => {
    const modelShare = model(one.station, one.state)
    if (modelShare === null) throw new RangeError(`the model has no station "${one.station}"`)
    if (!(one.share >= 0 && one.share <= 1)) throw new RangeError(`"${one.station}": ${one.state} is a share from 0 % to 100 %`)
    return { ...one, modelShare, differs: Math.abs(one.share - modelShare) > WAIT_SHOWN }
  })
  return found.toSorted((a, b) => Math.abs(b.share - b.modelShare) - Math.abs(a.share - a.modelShare))
}
