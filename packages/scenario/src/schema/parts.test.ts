import { expect, test } from 'vitest'
import { carriersSchema, cornerSchema, loopSchema, pathSchema, stationSchema, stopSchema, zoneSchema } from './parts.ts'

test('the forms of each part', () => {
  const right: [{ safeParse(value: unknown): { success: boolean } }, unknown[], unknown[]][] = [
    [carriersSchema, [{ count: 1 }, { count: 2, start: ['a', 'b'] }], [{}, { count: 0 }, { count: 1.5 }, { count: 1, start: 'here' }]],
    [loopSchema, ['3 zones of 1 m', ['2 × 1 m', { length: '1 m' }]], [3, [3], [{ lenght: '1 m' }]]],
    [zoneSchema, [{}, { transfer: 'none' }, { transfer: { lift: '1 s', lower: '1 s' } }], [{ transfer: { lift: '1 s' } }, { turn: 'up' }]],
    [pathSchema, [{ from: 'a' }, { from: 'a', to: 'b', clear: 'move' }], [{ to: 'b' }, { from: 'a', across: 'yes' }]],
    [cornerSchema, [{ zones: ['a'], turn: 'left', lift: '1 s', lower: '1 s' }], [{ zones: 'a', turn: 'left', lift: '1 s', lower: '1 s' }]],
    [stationSchema, [{ zone: 'a', load: {} }], [{ load: {} }, { zone: 'a', load: [] }]],
    [
      stopSchema,
      [
        { at: 'line', lasts: '1 s' },
        { at: ['a'], lasts: '1 s', after: '1 s' },
      ],
      [{ at: 'line' }, { at: { place: 'a' }, lasts: '1 s' }],
    ],
  ]
  for (const [schema, good, bad] of right) {
    for (const value of good) expect([value, schema.safeParse(value).success]).toEqual([value, true])
    for (const value of bad) expect([value, schema.safeParse(value).success]).toEqual([value, false])
  }
})
