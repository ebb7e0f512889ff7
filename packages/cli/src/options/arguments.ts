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
 * A port that a program without special rights may have.
 *
 * @example portNumber('8620') // => 8620
 */
export function portNumber(text: string): number {
  const value = Number(text)
  if (!/^\d+$/.test(text) || value < 1024 || value > 65_000) throw new InvalidArgumentError('Write a number from 1024 to 65000.')
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

/** A level below this decides nothing; percent. */
const LEVEL_MIN = 50

/**
 * A confidence in percent, from 50 and below 100. A share, such as 0.95, is told how it is written.
 *
 * @example levelPercent('95') // => 95
 */
export function levelPercent(text: string): number {
  const value = percent(text)
  if (value < 1) throw new InvalidArgumentError(`Confidence is in percent: write ${Number((100 * value).toPrecision(12))}.`)
  if (value < LEVEL_MIN) throw new InvalidArgumentError(`Write percent from ${LEVEL_MIN} and below 100, such as 95.`)
  return value
}

/**
 * The name of a file or folder.
 *
 * @example fileName('out/events.ndjson') // => 'out/events.ndjson'
 */
export function fileName(text: string): string {
  if (text.trim() === '') throw new InvalidArgumentError('The name is empty; write one, such as out/result.')
  return text
}

/**
 * The name of a page: an HTML file.
 *
 * @example pageFile('out/carriers.html') // => 'out/carriers.html'
 */
export function pageFile(text: string): string {
  if (text.trim() === '') throw new InvalidArgumentError('The name is empty; write one that ends in .html, such as out/page.html.')
  if (isPage(text)) return text
  const paper = /\.pdf$/i.test(text) ? '; a browser prints it to a PDF file' : ''
  throw new InvalidArgumentError(`The page is an HTML file: write ${withEnding(text)}${paper}.`)
}

/**
 * Whether a file is a page: HTML by its ending.
 *
 * @example isPage('out/carriers.htm') // => true
 */
export const isPage = (name: string): boolean => /\.html?$/i.test(name)

/** Other files that a page or lines of text would be taken for. */
const PICTURE = /\.(pdf|png|jpe?g|gif|svg|xlsx?|docx?|pptx?)$/i

/**
 * The name of a file for events: lines of text, or a page where it ends in .html.
 *
 * @example eventsFile('events.ndjson') // => 'events.ndjson'
 */
export function eventsFile(text: string): string {
  const name = fileName(text)
  if (!PICTURE.test(name)) return name
  throw new InvalidArgumentError(`Events are written as lines of text, or as a picture in an HTML file: write ${withEnding(name)}.`)
}

/** `page.pdf` → `page.html` */
const withEnding = (name: string): string => `${name.replace(/(?<=[^/\\])\.[^./\\]*$/, '')}.html`

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

/**
 * A share of a study: which, of how many.
 *
 * @example shareOf('3/8') // => { part: 3, of: 8 }
 */
export function shareOf(text: string): { part: number; of: number } {
  const match = /^(\d{1,6})\s*\/\s*(\d{1,6})$/.exec(text.trim())
  const [part, of] = [Number(match?.[1]), Number(match?.[2])]
  if (match === null || part < 1 || part > of)
    throw new InvalidArgumentError('Write which share of how many, such as 3/8, from 1/8 to 8/8.')
  return { part, of }
}

/**
 * Names separated by commas.
 *
 * @example nameList('S4, S5') // => ['S4', 'S5']
 */
export function nameList(text: string): string[] {
  const names = text.split(',').map((name) => name.trim())
  if (names.some((name) => name === '')) throw new InvalidArgumentError('Write names separated by commas, such as S4,S5.')
  return names
}

/**
 * Counts separated by commas, from 0.
 *
 * @example countList('20, 41') // => [20, 41]
 */
export function countList(text: string): number[] {
  const counts = text.split(',').map((part) => part.trim())
  if (counts.some((part) => !/^\d{1,9}$/.test(part))) throw new InvalidArgumentError('Write counts separated by commas, such as 20,41,63.')
  return counts.map(Number)
}
