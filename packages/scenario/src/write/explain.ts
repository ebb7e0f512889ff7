/** The complete form of a scenario file, with every default and where it came from. */
import type { Problem } from '../problems/problems.ts'
import { type ReadOptions, readWithOrigins } from '../read.ts'
import { writeExplained } from './write.ts'

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
  const reading = readWithOrigins(text, options)
  if (reading.scenario === null) return { text: null, problems: reading.problems }
  const remarks = (path: string): string => {
    const origin = reading.origins.get(path) ?? ''
    return origin === '' || /^(default\b|always\b|from\b)/.test(origin) ? origin : `from ${origin}`
  }
  const heading = ` Complete form of ${fileName.replace(/\s+/g, ' ')}: every value in base units, with where it came from if the file does not say it here.`
  return { text: writeExplained(reading.scenario, remarks, heading), problems: reading.problems }
}
