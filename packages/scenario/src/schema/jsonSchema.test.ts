import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import { schemaCheck } from '../../../../tests/helpers/schemaCheck.ts'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { resolveScenario } from '../write/explain.ts'
import { scenarioJsonSchema } from './jsonSchema.ts'

const SCENARIOS = new URL('../../../../scenarios/', import.meta.url)
const names = readdirSync(SCENARIOS).filter((name) => name.endsWith('.yaml'))

test('the file for editors is the schema that checks', async () => {
  await expect(`${JSON.stringify(scenarioJsonSchema(), null, 2)}\n`).toMatchFileSnapshot('../../../../scenarios/scenario.schema.json')
})

test('another validator agrees: right files pass, in short and in complete form; wrong ones fail', () => {
  const valid = schemaCheck(scenarioJsonSchema())
  for (const name of names) {
    const text = readFileSync(new URL(name, SCENARIOS), 'utf8')
    expect([name, valid(parse(text)), valid(parse(resolveScenario(text, name).text!))]).toEqual([name, true, true])
  }
  const wrong: [string, string][] = [
    ['drive:', 'drvie:'],
    ['count: 4', 'count: four'],
    ['format: 1', 'format: 2'],
    ['1 h', '3600'],
    ['40 s ± 10 %', '{ kind: gama }'],
    ['zone: Z04, ', ''],
  ]
  for (const change of wrong) expect([change, valid(parse(scenarioText(change)))]).toEqual([change, false])
})
