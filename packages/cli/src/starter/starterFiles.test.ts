import { readScenario, scenarioJsonSchema } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { starterFiles } from './starterFiles.ts'

const files = new Map(starterFiles(scenarioJsonSchema(), null).map(({ name, text }) => [name, text]))

test('the line is right, with its variation', () => {
  const { scenario, problems } = readScenario(files.get('line.yaml')!)
  expect(problems).toEqual([])
  expect(scenario!.plan?.unitsPerWindow).toBe(400)
})

test('ten lines of README, which name what is there', () => {
  const text = files.get('README.md')!
  expect(text.trim().split('\n').length).toBeLessThanOrEqual(10)
  for (const name of ['line.yaml', 'study.ts', 'scenario.schema.json', 'tsconfig.json']) expect(text).toContain(name)
})

test('the schema is that of scenario files, and the line names it', () => {
  expect(JSON.parse(files.get('scenario.schema.json')!)).toEqual(JSON.parse(JSON.stringify(scenarioJsonSchema())))
  expect(files.get('line.yaml')).toContain('$schema=scenario.schema.json')
})

test('an editor is told where the packages lie, unless it finds them by name', () => {
  const settingsOf = (types: Parameters<typeof starterFiles>[1]) =>
    JSON.parse(starterFiles({}, types).find(({ name }) => name === 'tsconfig.json')!.text).compilerOptions
  expect(settingsOf(null)).not.toHaveProperty('paths')
  const built = settingsOf({ pattern: '/there/*/dist/index.d.ts', source: false })
  expect(built.paths).toEqual({ '@loopwright/*': ['/there/*/dist/index.d.ts'] })
  expect(built).not.toHaveProperty('customConditions')
  expect(settingsOf({ pattern: '/there/*/src/index.ts', source: true }).customConditions).toEqual(['loopwright-source'])
})
