import { expect, test } from 'vitest'
import { schemaCheck } from '../../../../tests/helpers/schemaCheck.ts'
import { distributionRecordSchema } from './distributionRecord.ts'

const valid = schemaCheck({ $ref: '#/definitions/distribution', definitions: { distribution: distributionRecordSchema() } })

test.each([
  [{ kind: 'constant', value: 4 }, true],
  [{ kind: 'empirical', values: [3, 4], interpolate: false }, true],
  [{ kind: 'occasional', base: 3, probability: 0.1, of: { kind: 'weibull', shape: 2, scale: 9 } }, true],
  [{ kind: 'limited', of: { kind: 'lognormal', mean: 4, cv: 0.3 }, shift: 2, min: null, max: 60 }, true],
  [{ kind: 'constant' }, false],
  [{ kind: 'constant', value: 4, cv: 0.1 }, false],
  [{ kind: 'occasional', base: 3, probability: 0.1, of: { kind: 'weibull', shape: 2 } }, false],
  [{ kind: 'none of these', value: 4 }, false],
])('%j', (record, right) => expect(valid(record)).toBe(right))
