/** JSON Schema of a scenario file, for editors. */
import * as z from 'zod'
import { fileSchema } from './file.ts'

/**
 * Draft 7, made from the schema that checks files. What it cannot say (units, names, sums) is checked by `readScenario` alone.
 *
 * @example scenarioJsonSchema()['$schema'] // => 'http://json-schema.org/draft-07/schema#'
 */
export function scenarioJsonSchema(): Record<string, unknown> {
  return { title: 'loopwright scenario', ...z.toJSONSchema(fileSchema, { io: 'input', target: 'draft-7' }) }
}
