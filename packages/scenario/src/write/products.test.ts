import { PLAIN_LINE } from '@loopwright/line'
import { expect, test } from 'vitest'
import { stringify } from 'yaml'
import type { Scenario } from '../scenario.ts'
import { NO_REMARKS } from './nodes.ts'
import { named, products, ungrouped } from './products.ts'

const line = { ...PLAIN_LINE, variants: ['a', 'b'], mix: { kind: 'pattern', sequence: [0, 1] } } as unknown as Scenario['line']
const written = (scenario: Partial<Scenario>): string =>
  stringify(products({ line, titles: { tasks: {}, variants: {} }, ...scenario } as Scenario, { remarks: NO_REMARKS, wide: false }))

test('a name that has a title of its own is written with it', () => {
  expect(stringify(named(['a', '__proto__'], { a: 'Apple' }))).toBe('[ { name: a, title: Apple }, __proto__ ]\n')
})

test('groups are written where they say more than the variants do', () => {
  expect(written({ variantGroups: ungrouped(line, {}) })).toBe('variants: [ a, b ]\nmix: { kind: pattern, sequence: [ a, b ] }\n')
  expect(written({ variantGroups: [{ name: 'all', title: 'All', variants: [0, 1] }] })).toContain('all: { title: All, variants: [ a, b ] }')
})
