import type { Distribution } from '@loopwright/stats'

/**
 * The same times, longer or shorter by a factor: what a draw was, it is now times the factor.
 *
 * @param factor  > 0
 * @example scaledTimes({ kind: 'lognormal', mean: 20, cv: 0.3 }, 0.5) // => { kind: 'lognormal', mean: 10, cv: 0.3 }
 */
export function scaledTimes(times: Distribution, factor: number): Distribution {
  const scaled = (value: number): number => value * factor
  switch (times.kind) {
    case 'constant':
      return { ...times, value: scaled(times.value) }
    case 'uniform':
      return { ...times, min: scaled(times.min), max: scaled(times.max) }
    case 'triangular':
    case 'pert':
      return { ...times, min: scaled(times.min), mode: scaled(times.mode), max: scaled(times.max) }
    case 'exponential':
    case 'lognormal':
    case 'gamma':
      return { ...times, mean: scaled(times.mean) }
    case 'weibull':
      return { ...times, scale: scaled(times.scale) }
    case 'empirical':
    case 'discrete':
    case 'replay':
      return { ...times, values: times.values.map(scaled) }
    case 'occasional':
      return { ...times, base: scaled(times.base), of: scaledTimes(times.of, factor) }
    case 'limited':
      return {
        ...times,
        of: scaledTimes(times.of, factor),
        shift: scaled(times.shift),
        min: times.min === null ? null : scaled(times.min),
        max: times.max === null ? null : scaled(times.max),
      }
  }
}
