import { Ajv, type ValidateFunction } from 'ajv'

/** What judges documents by a JSON Schema of the command, all that is wrong at once; a schema that says what nobody means is refused. */
export const schemaCheck = (schema: object): ValidateFunction =>
  new Ajv({ allErrors: true, strict: true, strictTypes: false, allowUnionTypes: true }).compile(schema)
