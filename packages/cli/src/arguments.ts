/** Values of options: text to numbers, with what is right where it is not. */
import { InvalidArgumentError } from 'commander'

/** Carriers on a loop, more than any loop holds; a typing error is caught before it fills the memory. */
const COUNT_MAX = 100_000

/**
 * Numbers of carriers: `5..18`, `5,8,12`, or both mixed.
 *
 * @returns  ascending, each once
 * @example carrierCounts('5..7,10') // => [5, 6, 7, 10]
 */
export function carrierCounts(text: string): number[] {
  const counts = new Set<number>()
  for (const part of text.split(',')) {
    const match = /^\s*(\d+)(?:\s*\.\.\s*(\d+))?\s*$/.exec(part)
    if (match === null) throw new InvalidArgumentError('Write a range such as 5..18, or a list such as 5,8,12.')
    const from = Number(match[1])
    const to = Number(match[2] ?? match[1])
    if (from > to) throw new InvalidArgumentError(`The range runs backwards; did you mean ${to}..${from}?`)
    if (from < 1 || to > COUNT_MAX) throw new InvalidArgumentError(`A loop has from 1 to ${COUNT_MAX} carriers.`)
    for (let count = from; count <= to; count += 1) counts.add(count)
  }
  return [...counts].sort((a, b) => a - b)
}

/**
 * A count from 1 on.
 *
 * @example wholeNumber('200') // => 200
 */
export function wholeNumber(text: string): number {
  const value = Number(text)
  if (!/^\d+$/.test(text) || value < 1 || value > 1_000_000) throw new InvalidArgumentError('Write a whole number from 1 to 1000000.')
  return value
}

/**
 * Percent, above 0 and below 100.
 *
 * @example percent('2.5') // => 2.5
 */
export function percent(text: string): number {
  const value = Number(text.replace(/\s*%$/, ''))
  if (text.trim() === '' || !(value > 0 && value < 100))
    throw new InvalidArgumentError('Write percent above 0 and below 100, such as 1 or 2.5.')
  return value
}

/**
 * The text that names the random worlds.
 *
 * @example seedText('42') // => '42'
 */
export function seedText(text: string): string {
  if (text === '') throw new InvalidArgumentError('A seed is a text of at least one character, such as 42.')
  if (text.includes('/')) throw new InvalidArgumentError('A seed has no "/" in it: two different streams could get the same name.')
  return text
}

/**
 * A number above 0.
 *
 * @example positiveNumber('2.5') // => 2.5
 */
export function positiveNumber(text: string): number {
  const value = Number(text)
  if (!/^\d*\.?\d+$/.test(text) || !(value > 0)) throw new InvalidArgumentError('Write a number above 0, such as 2.5.')
  return value
}

/**
 * The number of a replication, from 0.
 *
 * @example replicationNumber('7') // => 7
 */
export function replicationNumber(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError('Replications are numbered 0, 1, 2 and so on.')
  return Number(text)
}
