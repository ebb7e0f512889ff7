/** Values of a scenario file and where they stand. */

export type Kind = 'map' | 'list' | 'text' | 'number' | 'boolean' | 'null'

/** A value of the file and where it stands. Offsets count characters of the whole text. */
export interface Located {
  readonly kind: Kind
  /** of a scalar; null for maps and lists */
  readonly value: string | number | boolean | null
  /** a scalar as it was written */
  readonly source: string
  readonly path: string
  readonly start: number
  readonly end: number
  /** of its own key, where it stands in a map */
  readonly keyStart?: number
  readonly keyEnd?: number
  /** where the first character of a text stands, if columns inside it can be told */
  readonly textStart: number | null
  readonly entries: ReadonlyMap<string, Entry>
  readonly items: readonly Located[]
  /** nothing could be read here, and why is reported: no more about it */
  readonly broken?: true
}

/** A key of a map, where it stands, and its value. */
export interface Entry {
  readonly key: string
  readonly keyStart: number
  readonly keyEnd: number
  readonly value: Located
}

/**
 * What was found, for a sentence: `the number 5`, `a list`.
 *
 * @example describe(readSource('a: 5', createReport('a: 5')).entries.get('a').value) // => 'the number 5'
 */
export function describe(located: Located): string {
  if (located.kind === 'map') return 'a set of keys'
  if (located.kind === 'list') return 'a list'
  if (located.kind === 'null') return 'nothing'
  if (located.kind === 'number') return `the number ${located.source.slice(0, 40)}`
  if (located.kind === 'boolean') return `"${located.source}"`
  return `the text "${String(located.value).slice(0, 60)}"`
}

/**
 * One step of a path, quoted where a name would be misread.
 *
 * @example joinPath('stations', 'S.1') // => 'stations."S.1"'
 */
export function joinPath(path: string, key: string): string {
  const step = /["[\]]|\./.test(key) || key === '' ? `"${key.replaceAll('"', '')}"` : key
  return path === '' ? step : `${path}.${step}`
}

/** The plain value, for the shape check. Maps have no prototype, so that any key is just a key. */
export function plain(located: Located): unknown {
  if (located.kind === 'map') {
    const object = Object.create(null) as Record<string, unknown>
    for (const [key, entry] of located.entries) object[key] = plain(entry.value)
    return object
  }
  return located.kind === 'list' ? located.items.map(plain) : located.value
}
