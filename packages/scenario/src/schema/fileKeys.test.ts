import { readFileSync } from 'node:fs'
import { distributionKinds } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { filesUnder } from '../../../../tests/tidy/sources.ts'
import { FILE_KEYS } from './fileKeys.ts'
import { scenarioJsonSchema } from './jsonSchema.ts'

/** Every key that some part of a file may have. */
function keysOf(schema: unknown): string[] {
  if (typeof schema !== 'object' || schema === null) return []
  const properties = 'properties' in schema && typeof schema.properties === 'object' ? Object.keys(schema.properties ?? {}) : []
  return [...properties, ...Object.values(schema).flatMap(keysOf)]
}
const inSchema = [...new Set(keysOf(scenarioJsonSchema()))]
const ofKinds = distributionKinds().flatMap(({ fields }) => Object.keys(fields))

test('the keys are those of the schema, and no other', () => {
  expect(inSchema.filter((key) => !(FILE_KEYS as readonly string[]).includes(key) && !ofKinds.includes(key))).toEqual([])
  expect(FILE_KEYS.filter((key) => !inSchema.includes(key))).toEqual([])
  expect([...FILE_KEYS]).toEqual([...FILE_KEYS].sort())
})

test('every key is read', () => {
  const text = (folder: string): string =>
    filesUnder(`packages/scenario/src/${folder}`, /(?<!\.test)\.ts$/)
      .map((source) => source.text)
      .join('\n')
  const reading = text('resolve') + text('changes')
  const kinds = ofKinds
  expect(FILE_KEYS.filter((key) => !kinds.includes(key) && !reading.includes(`'${key}'`))).toEqual([])
})

test('the reference page names every key', () => {
  const page = readFileSync(new URL('../../README.md', import.meta.url), 'utf8')
  expect(inSchema.length).toBeGreaterThan(60)
  expect(inSchema.filter((key) => !new RegExp(`\\b${key}\\b`).test(page))).toEqual([])
})
