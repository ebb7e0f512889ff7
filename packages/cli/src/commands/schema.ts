import type { SchemaName } from '../documents/schemaNames.ts'
import { DONE, type Shell } from '../shell/shell.ts'

/** Prints a JSON Schema: of scenario files, or of what a command prints with `--json`. */
export async function schema(shell: Shell, of: SchemaName): Promise<number> {
  shell.out.write(`${JSON.stringify(await schemaOf(of), null, 2)}\n`)
  return DONE
}

async function schemaOf(of: SchemaName): Promise<object> {
  if (of === 'scenario') return (await import('@loopwright/scenario')).scenarioJsonSchema()
  return (await import('../documents/documentSchemas.ts')).DOCUMENT_SCHEMAS[of]()
}
