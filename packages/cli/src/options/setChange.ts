/** Changes of one line as an option says them: `fast: drive.speed=18 m/min; carriers.count=10`. */
import { atColumn, split } from './levels.ts'

export interface SetChange {
  /** what the line is called: what stands before `: `, or the changes themselves */
  readonly name: string
  readonly changes: Readonly<Record<string, string>>
}

/**
 * A name, which may be left out, and changes by path, parted by semicolons.
 *
 * @example setChange('fast: drive.speed=18 m/min; carriers.count=10').changes // => { 'drive.speed': '18 m/min', 'carriers.count': '10' }
 */
export function setChange(text: string): SetChange {
  const prefix = /^([^=;{}[\]"]*):\s+/u.exec(text)
  const from = prefix?.[0].length ?? 0
  const changes = new Map<string, string>()
  for (const { value, at } of split(text, from, ';')) {
    const begin = at + (text.slice(at).length - text.slice(at).trimStart().length)
    const equals = value.indexOf('=')
    const path = value.slice(0, Math.max(0, equals)).trim()
    if (path === '')
      throw atColumn(text, begin, 'Write changes as path=value, parted by ";", such as "fast: drive.speed=18 m/min; carriers.count=10".')
    if (changes.has(path)) throw atColumn(text, begin, `${path} is changed twice; change it once.`)
    const to = value.slice(equals + 1).trim()
    changes.set(path, to)
    if (to === '') throw atColumn(text, begin + equals + 1, `There is no value behind "${path}=".`)
  }
  const name = prefix?.[1]?.trim() ?? ''
  return { name: name === '' ? text.slice(from).trim() : name, changes: Object.fromEntries(changes) }
}

/** Option that may be repeated: a line each. */
export const moreChanges = (text: string, before: readonly SetChange[] = []): SetChange[] => [...before, setChange(text)]
