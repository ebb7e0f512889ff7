/** JSON Schema of a distribution as the engine takes it, not as files write it. */
import { distributionKinds, type FieldIs } from '@loopwright/stats'

const number = (least: object = {}): object => ({ type: 'number', ...least })
const FORMS: Readonly<Record<FieldIs, object>> = {
  value: number({ minimum: 0 }),
  positive: number({ exclusiveMinimum: 0 }),
  extra: number(),
  limit: { type: ['number', 'null'] },
  values: { type: 'array', items: number() },
  share: number({ minimum: 0, maximum: 1 }),
  ratio: number({ minimum: 0 }),
  number: number(),
  numbers: { type: 'array', items: number() },
  flag: { type: 'boolean' },
  distribution: { $ref: '#/definitions/distribution' },
}

/**
 * JSON Schema (draft 7) of a distribution as the engine takes it, for `definitions: { distribution }`: a record for each kind, with the fields that the kind names.
 *
 * @example distributionRecordSchema().anyOf[0].required // => ['kind', 'value']
 */
export function distributionRecordSchema(): { readonly anyOf: readonly { readonly required: readonly string[] }[] } {
  return {
    anyOf: distributionKinds().map(({ kind, fields, says }) => ({
      type: 'object',
      description: says,
      properties: {
        kind: { const: kind },
        ...Object.fromEntries(
          Object.entries(fields).map(([name, [is, meaning]]) => [
            name,
            { ...FORMS[is], ...(meaning === undefined || is === 'distribution' ? {} : { description: meaning }) },
          ]),
        ),
      },
      required: ['kind', ...Object.keys(fields)],
      additionalProperties: false,
    })),
  }
}
