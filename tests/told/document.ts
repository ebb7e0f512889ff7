/** What a rule reads out of a document in JSON, wherever it stands there. */

type Fields = Readonly<Record<string, unknown>>

/** Every object of a document. */
export function objectsOf(value: unknown): Fields[] {
  if (Array.isArray(value)) return value.flatMap(objectsOf)
  if (value === null || typeof value !== 'object') return []
  return [value as Fields, ...Object.values(value).flatMap(objectsOf)]
}

export interface Interval {
  readonly mean: number
  readonly halfWidth: number
}

export const intervalsOf = (document: unknown): Interval[] =>
  objectsOf(document).flatMap(({ mean, halfWidth }) =>
    typeof mean === 'number' && typeof halfWidth === 'number' ? [{ mean, halfWidth }] : [],
  )

export interface Share {
  readonly successes: number
  readonly n: number
}

export const sharesOf = (document: unknown): Share[] =>
  objectsOf(document).flatMap(({ successes, n }) => (typeof successes === 'number' && typeof n === 'number' ? [{ successes, n }] : []))

export interface StationStates {
  readonly name: string
  readonly title: string
  /** seconds or shares */
  readonly states: Readonly<Record<string, number>>
}

/** Stations with the time in each state: of the count that was chosen, else of the first one told. */
export function stationsOf(document: unknown): StationStates[] {
  const all = objectsOf(document)
  const chosen = all.map(({ answer }) => (answer as Fields | undefined)?.chosen).find((count) => typeof count === 'number')
  const told = all.filter(({ stations }) => Array.isArray(stations) && stations.some(hasStates))
  const holder = told.find(({ carriers }) => carriers === chosen) ?? told[0]
  return ((holder?.stations as Fields[] | undefined) ?? []).filter(hasStates).map((station) => ({
    name: String(station.name ?? station.station),
    title: String(station.title ?? station.name ?? station.station),
    states: (station.shares ?? station.seconds) as Record<string, number>,
  }))
}

function hasStates(station: unknown): boolean {
  const states = (station as Fields).shares ?? (station as Fields).seconds
  return typeof states === 'object' && states !== null && typeof (states as Fields).starved === 'number'
}
