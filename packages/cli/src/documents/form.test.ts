import { expect, test } from 'vitest'
import { schemaCheck } from '../../../../tests/helpers/schemaCheck.ts'
import { formHead, formHeadSchema } from './form.ts'

test('a head is what its schema says, and no other head is', () => {
  const schema = { type: 'object', properties: formHeadSchema('run'), required: ['format', 'document'], additionalProperties: false }
  const valid = schemaCheck(schema)
  expect(valid(formHead('run'))).toBe(true)
  expect(valid(formHead('sweep'))).toBe(false)
})
