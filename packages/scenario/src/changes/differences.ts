/** What differs between two scenarios, by path of their complete form: what a comparison really compares. */
import { distributionKinds } from '@loopwright/stats'
import { joinPath } from '../text/located.ts'
import type { Scenario } from '../scenario.ts'
import { untitled, writtenValues } from '../write/write.ts'
import { type ZoneRun, zoneChanges } from './zoneChanges.ts'

/** One value that differs between two scenarios, as text. */
export interface Difference {
  /** field path of the complete form; `*` stands for the places where the same has changed */
  readonly path: string
  /** names that `*` stands for; empty without one */
  readonly places: readonly string[]
  /** as text, in shop-floor units; null: there is none */
  readonly before: string | null
  readonly after: string | null
}

/** Headings, not inputs; nor are the titles of the parts. */
const LEFT_OUT = new Set(['format', 'name', 'question'])
/** Parts with a name each: the same change of several of them is one difference. */
const COLLECTIONS = new Set(['zones', 'paths', 'stations', 'stops'])

/**
 * The inputs of `after` that are not those of `before`: values that the files write differently but mean the same do not count.
 *
 * Zones that one loop has more are one difference for each place, however the zones are numbered: it stands first, at the path `loop`.
 *
 * @returns in the order of the complete form; the same change in several places is one difference
 * @example scenarioDifferences(scenario, readScenarioWith(text, { 'carriers.count': 5 }).scenario) // => [{ path: 'carriers.count', places: [], before: '4', after: '5' }]
 */
export function scenarioDifferences(before: Scenario, after: Scenario): Difference[] {
  const plain = valueDifferences(before, after)
  const zones = zoneChanges(before, after)
  if (zones === null) return plain
  const told = [...zones.runs.map((run) => zoneDifference(run, before, after)), ...valueDifferences(zones.before, zones.after)]
  return told.length < plain.length ? told : plain
}

/** `loop`: 22 zones → 24 zones: 2 put in before S3. */
function zoneDifference({ kind, zones, before: end }: ZoneRun, before: Scenario, after: Scenario): Difference {
  const count = ({ line }: Scenario): string => `${line.zones.length} zone${line.zones.length === 1 ? '' : 's'}`
  return { path: 'loop', places: zones, before: count(before), after: `${count(after)}: ${zones.length} ${kind} before ${end}` }
}

/** Value by value, zones by their names. */
function valueDifferences(before: Scenario, after: Scenario): Difference[] {
  const old = leaves(before)
  const now = leaves(after)
  const grouped = new Map<string, { path: string; places: string[]; before: string | null; after: string | null }>()
  for (const key of new Set([...old.keys(), ...now.keys()])) {
    const [a, b] = [old.get(key), now.get(key)]
    if (a?.text === b?.text) continue
    const { collection, place, rest } = (a ?? b)!
    const change = { before: a?.text ?? null, after: b?.text ?? null }
    const group = JSON.stringify([collection, rest, change])
    const known = grouped.get(group)
    if (known === undefined) grouped.set(group, { path: key, places: place === null ? [] : [place], ...change })
    else {
      known.path = `${collection}.*${rest === '' ? '' : `.${rest}`}`
      known.places.push(place!)
    }
  }
  return [...grouped.values()].map((each) => (each.path.includes('*') ? each : { ...each, places: [] }))
}

interface Leaf {
  readonly collection: string | null
  readonly place: string | null
  /** path below the place, or the whole */
  readonly rest: string
  readonly text: string
}

function leaves(scenario: Scenario): Map<string, Leaf> {
  const found = new Map<string, Leaf>()
  const root = writtenValues({ ...scenario, ...untitled(scenario.line) })
  for (const [key, value] of Object.entries(root)) {
    if (LEFT_OUT.has(key)) continue
    if (!COLLECTIONS.has(key)) walk(value, key, (path, text) => found.set(path, { collection: null, place: null, rest: path, text }))
    else
      for (const [place, part] of parts(value)) {
        walk(part, '', (rest, text) => {
          const at = joinPath(key, place)
          found.set(rest === '' ? at : `${at}.${rest}`, { collection: key, place, rest, text })
        })
      }
  }
  return found
}

/** Named parts; paths go by the zones they join. */
function parts(value: unknown): [string, unknown][] {
  if (!Array.isArray(value)) return Object.entries((value ?? {}) as Record<string, unknown>)
  return value.map((part: Record<string, unknown>) => [`${part.from} → ${part.to}`, part])
}

function walk(value: unknown, path: string, onLeaf: (path: string, text: string) => void): void {
  if (value === null || typeof value !== 'object') onLeaf(path, shopFloor(String(value)))
  else if (Array.isArray(value)) onLeaf(path, value.map((each) => flat(each)).join(', '))
  else if ('kind' in value || Object.values(value).every((each) => each === null || typeof each !== 'object')) {
    // a distribution is one value; other small maps go field by field
    if (isTime(value)) onLeaf(path, flat(value))
    else for (const [key, each] of Object.entries(value)) walk(each, path === '' ? key : joinPath(path, key), onLeaf)
  } else for (const [key, each] of Object.entries(value)) walk(each, path === '' ? key : joinPath(path, key), onLeaf)
}

const TIME_KINDS = new Set(distributionKinds().map(({ kind }) => kind))

function isTime(value: object): boolean {
  return 'kind' in value && TIME_KINDS.has(String(value.kind))
}

/** One line of text for a small value. */
function flat(value: unknown): string {
  if (Array.isArray(value)) return value.map(flat).join(', ')
  if (value === null || typeof value !== 'object') return shopFloor(String(value))
  const { kind, ...rest } = value as Record<string, unknown>
  const fields = Object.entries(rest).map(([key, each]) => `${key} ${flat(each)}`)
  return [...(kind === undefined ? [] : [String(kind)]), ...fields].join(' ')
}

/** A value of the complete form as people on the floor read it: 15 m/min for 0.25 m/s, 500 min for 30000 s. */
function shopFloor(text: string): string {
  const match = /^(-?[\d.]+(?:e[+-]?\d+)?) (m\/s|s)$/.exec(text)
  if (match === null) return text
  const value = Number(match[1])
  const tidy = (number: number): string => String(Number(number.toPrecision(12)))
  if (match[2] === 'm/s') return `${tidy(value * 60)} m/min`
  return value >= 600 ? `${tidy(value / 60)} min` : text
}
