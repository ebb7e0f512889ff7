/** Levels of a factor as an option says them: `drive.speed=10,12,15 m/min`. */
import { InvalidArgumentError } from 'commander'

export interface FactorLevels {
  readonly path: string
  readonly levels: readonly string[]
}

/**
 * Levels behind a path. Commas part them, but not within brackets or quotation marks; where a `|` stands outside of them, that parts them instead.
 * What stands behind the number of the last level, a unit or a spread too, holds for bare numbers before it.
 *
 * @example factorLevels('drive.speed=10,12,15 m/min').levels // => ['10 m/min', '12 m/min', '15 m/min']
 * @example factorLevels('stations.S2.work.fit=45,50 s ± 15 %').levels // => ['45 s ± 15 %', '50 s ± 15 %']
 * @example factorLevels('carriers.start=[Z01, Z05] | spread').levels // => ['[Z01, Z05]', 'spread']
 */
export function factorLevels(text: string): FactorLevels {
  const equals = text.indexOf('=')
  const path = text.slice(0, Math.max(0, equals)).trim()
  if (path === '') throw atColumn(text, Math.max(0, equals), 'Write a path and its levels, such as "drive.speed=10,12,15 m/min".')
  const start = equals + 1
  const bars = split(text, start, '|')
  const parts = bars.length > 1 ? bars : split(text, start, ',')
  const empty = parts.find(({ value }) => value === '')
  if (empty !== undefined)
    throw atColumn(
      text,
      empty.at,
      parts.length === 1 ? 'There is no level behind "=".' : 'There is no level here; write one, or leave out the sign before it.',
    )
  const values = parts.map(({ value }) => value)
  const shared = /^-?\d+(?:\.\d+)?\s*(\D.*)$/u.exec(values.at(-1)!)?.[1]
  const levels = values.map((value) => (shared !== undefined && /^-?\d+(?:\.\d+)?$/u.test(value) ? `${value} ${shared}` : value))
  return { path, levels }
}

/** Option that may be repeated: the same path again adds its levels. */
export function moreLevels(text: string, before: readonly FactorLevels[] = []): FactorLevels[] {
  const { path, levels } = factorLevels(text)
  const known = before.find((each) => each.path === path)
  if (known === undefined) return [...before, { path, levels }]
  return before.map((each) => (each === known ? { path, levels: [...each.levels, ...levels] } : each))
}

/** Parts of a text outside of brackets and quotation marks, and where each begins. */
export function split(text: string, from: number, sign: string): { readonly value: string; readonly at: number }[] {
  const found: { value: string; at: number }[] = []
  let [depth, quote, start] = [0, '', from]
  for (let at = from; at <= text.length; at += 1) {
    const letter = text[at]
    if (letter === undefined || (letter === sign && depth === 0 && quote === '')) {
      found.push({ value: text.slice(start, at).trim(), at: start })
      start = at + 1
    } else if (quote !== '') quote = letter === quote ? '' : quote
    else if (letter === '"' || letter === "'") quote = letter
    else if ('[{('.includes(letter)) depth += 1
    else if (')}]'.includes(letter)) depth -= 1
  }
  return found
}

/** characters of a text that are shown around a place, so that no line is wrapped */
const SHOWN = 60

/** Said with the text, or the part of it around the place, and a caret under the place. */
export function atColumn(text: string, at: number, sentence: string): InvalidArgumentError {
  const from = text.length <= SHOWN ? 0 : Math.max(0, Math.min(at - SHOWN / 2, text.length - SHOWN))
  const [before, after] = [from > 0 ? '…' : '', from + SHOWN < text.length ? '…' : '']
  const shown = `${before}${text.slice(from, from + SHOWN)}${after}`
  return new InvalidArgumentError(`${sentence}\n  ${shown}\n  ${' '.repeat(at - from + before.length)}^`)
}
