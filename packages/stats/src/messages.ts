import { StatisticsError } from './statisticsError.ts'

/** Every refusal of the methods, one function each: what, the value met, why, what to do. The special functions say theirs in special/domain.ts. */

/** "Cannot give an interval from 1 replication: give at least 2." */
export const tooFew = (what: string, n: number, unit: string, least: number): StatisticsError =>
  new StatisticsError('E_TOO_FEW', `Cannot give ${what} from ${n} ${unit}${n === 1 ? '' : 's'}: give at least ${least}.`)

export const notANumber = (what: string, value: unknown, row: number): StatisticsError =>
  new StatisticsError('E_NOT_A_NUMBER', `${what} holds ${String(value)} in row ${row}: each value must be a finite number.`)

export const notALevel = (level: number): StatisticsError =>
  new StatisticsError('E_DOMAIN', `The level is ${level}: give a share above 0 and below 1, such as 0.95.`)

export const notAShare = (name: string, value: number): StatisticsError =>
  new StatisticsError('E_DOMAIN', `${name} is ${value}: give a share above 0 and below 1.`)

export const notACount = (name: string, value: number, least: number): StatisticsError =>
  new StatisticsError('E_DOMAIN', `${name} is ${value}: give a whole number from ${least}.`)

export const notAboveZero = (name: string, value: number): StatisticsError =>
  new StatisticsError('E_DOMAIN', `${name} is ${value}: it must be above 0.`)

export const notInRange = (name: string, value: number, low: number, high: number): StatisticsError =>
  new StatisticsError('E_DOMAIN', `${name} is ${value}: it must lie in ${low} … ${high}.`)

export const unequalLength = (first: string, firstCount: number, second: string, secondCount: number): StatisticsError =>
  new StatisticsError(
    'E_UNEQUAL_LENGTH',
    `${first} has ${firstCount} values and ${second} has ${secondCount}: give as many of the one as of the other.`,
  )
