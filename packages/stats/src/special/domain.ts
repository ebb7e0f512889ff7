import { StatisticsError } from '../statisticsError.ts'

/** Inner checks of the special functions: the value that was met, and the range it must lie in. */
export function needPositive(where: string, name: string, value: number): void {
  if (!(value > 0 && value < Infinity))
    throw new StatisticsError('E_DOMAIN', `${where}: ${name} is ${value}; it must be above 0 and finite.`)
}

export function needNotNegative(where: string, name: string, value: number): void {
  if (!(value >= 0)) throw new StatisticsError('E_DOMAIN', `${where}: ${name} is ${value}; it must be 0 or more.`)
}

export function needProbability(where: string, value: number): void {
  if (!(value > 0 && value < 1))
    throw new StatisticsError('E_DOMAIN', `${where}: the probability is ${value}; it must be above 0 and below 1.`)
}

export function needShare(where: string, name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new StatisticsError('E_DOMAIN', `${where}: ${name} is ${value}; it must lie in 0 … 1.`)
}

export function notSettled(where: string, steps: number): StatisticsError {
  return new StatisticsError('E_NOT_SETTLED', `${where}: no answer after ${steps} steps; the arguments are too extreme for this method.`)
}
