import { readFileSync } from 'node:fs'
import type { LineSpec } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'

/**
 * The line of a scenario file, from the top of the project.
 *
 * @throws Error  where the file has errors
 */
export function lineOfFile(file: string): LineSpec {
  const { scenario } = readScenario(readFileSync(file, 'utf8'))
  if (scenario === null) throw new Error(`${file} has errors`)
  return scenario.line
}
