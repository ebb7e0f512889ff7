import { DONE, type Shell } from '../shell/shell.ts'

export const SCHEMAS = [
  'scenario',
  'run',
  'sweep',
  'carriers',
  'compare',
  'grid',
  'drivers',
  'forecast',
  'losses',
  'order',
  'steady',
  'balance',
  'times',
  'payback',
  'criteria',
  'screen',
  'promise',
  'shifts',
  'acceptance',
  'trial',
  'followup',
  'stoplog',
  'mix',
  'assemble',
  'trace',
] as const
export type SchemaName = (typeof SCHEMAS)[number]

/** Prints a JSON Schema: of scenario files, or of what a command prints with `--json`. */
export async function schema(shell: Shell, of: SchemaName): Promise<number> {
  shell.out.write(`${JSON.stringify(await schemaOf(of), null, 2)}\n`)
  return DONE
}

async function schemaOf(of: SchemaName): Promise<object> {
  switch (of) {
    case 'scenario':
      return (await import('@loopwright/scenario')).scenarioJsonSchema()
    case 'run':
      return (await import('../documents/runSchema.ts')).runSchema()
    case 'carriers':
      return (await import('../documents/carriersDocument.ts')).carriersSchema()
    case 'compare':
    case 'grid':
    case 'drivers':
    case 'forecast':
    case 'losses':
    case 'order':
    case 'steady':
    case 'balance':
    case 'times':
    case 'payback':
    case 'criteria':
    case 'screen':
    case 'promise':
    case 'shifts':
    case 'acceptance':
    case 'trial':
    case 'followup':
    case 'stoplog':
    case 'mix':
    case 'assemble':
      return (await import('../documents/studySchemas.ts')).STUDY_SCHEMAS[of]()
    case 'trace':
      return (await import('../documents/traceDocument.ts')).traceSchema()
    case 'sweep':
      return (await import('../documents/sweepDocument.ts')).sweepSchema()
  }
}
