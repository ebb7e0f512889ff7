/** The complete form of a scenario file, with every default and where it came from. */
import type { Problem } from '../problems/problems.ts'
import { isMap, isScalar, isSeq, type Node, stringify, type YAMLMap } from 'yaml'
import { type FileRead, type ReadOptions, readScenario } from '../read.ts'
import { compose, texted } from './write.ts'

/** The complete form of a file, or why there is none. */
export interface ResolveResult {
  /** YAML that reads back to the same scenario; null if the file has errors */
  readonly text: string | null
  readonly problems: readonly Problem[]
}

/**
 * The complete form of a scenario: every value in base units, with where it came from if the file does not say it.
 *
 * @param text      of the scenario file
 * @param fileName  named in the first line
 * @example resolveScenario(text, 'ring.yaml').problems // => []
 */
export function resolveScenario(text: string, fileName: string, options: ReadOptions = {}): ResolveResult {
  const read = readScenario(text, options)
  return { text: read.scenario === null ? null : completeForm(read, fileName), problems: read.problems }
}

/** What a complete form is made of: a file that was read, without errors. */
export type Explained = Pick<FileRead, 'scenario' | 'origins'>

/**
 * The complete form of a file that is read already.
 *
 * @param fileName  named in the first line
 * @example completeForm({ scenario, origins: new Map() }, 'ring.yaml').split('\n')[2] // => 'format: 1'
 */
export function completeForm({ scenario, origins }: Explained, fileName: string): string {
  const heading = ` Complete form of ${fileName.replace(/\s+/g, ' ')}: every value in base units, with where it came from if the file does not say it here.`
  return texted(explained({ scenario, origins }), heading)
}

/** A value that the file does not say. */
export interface DefaultValue {
  /** its key in the complete form */
  readonly field: string
  /** as the complete form says it */
  readonly value: string
  /** what it is, such as `the reaction time`; '': nothing to say */
  readonly why: string
  /** where it stands for what the file leaves out */
  readonly places: number
}

/**
 * The defaults that stand in the complete form of a file, each once, in its order.
 *
 * @example defaultsOf({ scenario, origins: new Map([['drive.reaction', 'default']]) }).map(({ field }) => field) // => ['reaction']
 */
export function defaultsOf({ scenario, origins }: Explained): DefaultValue[] {
  const found = new Map<string, { field: string; value: string; why: string; places: number }>()
  const take = (field: string, value: Node, why: string): void => {
    const key = JSON.stringify([field, isScalar(value) ? value.value : value, why])
    const entry = found.get(key)
    if (entry !== undefined) entry.places += 1
    else found.set(key, { field, value: written(value), why, places: 1 })
  }
  const look = (node: unknown): void => {
    if (isSeq(node)) for (const item of node.items) look(item)
    if (!isMap(node)) return
    for (const { key, value } of (node as YAMLMap<Node, Node>).items) {
      const why = DEFAULT.exec(value?.comment ?? '')
      if (value === null || why === null) look(value)
      else if (isScalar(key)) take(String(key.value), value, why[1] ?? '')
    }
  }
  look(explained({ scenario, origins }))
  return [...found.values()]
}

/** a remark behind a value that is a default, such as `default` or `default: the reaction time` */
const DEFAULT = /^ default(?:\b:? ?(.*))?$/

/** A value on its line, without the remark. */
function written(node: Node): string {
  const { comment = null } = node
  node.comment = null
  const text = stringify(node, { lineWidth: 0 }).trimEnd()
  node.comment = comment
  return text
}

/** One value a line, each with what it comes from behind it. */
function explained({ scenario, origins }: Explained): YAMLMap {
  const remarks = (path: string): string => {
    const origin = origins.get(path) ?? ''
    return origin === '' || /^(default\b|always\b|from\b)/.test(origin) ? origin : `from ${origin}`
  }
  return compose(scenario, { remarks, wide: true })
}
