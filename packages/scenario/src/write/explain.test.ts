import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { defaultsOf, resolveScenario } from './explain.ts'
import { readScenario } from '../read.ts'

const SCENARIOS = new URL('../../../../scenarios/', import.meta.url)

test('the complete form of every scenario reads back identical', () => {
  for (const name of readdirSync(SCENARIOS).filter((file) => file.endsWith('.yaml'))) {
    const text = readFileSync(new URL(name, SCENARIOS), 'utf8')
    const { text: complete } = resolveScenario(text, name)
    expect(readScenario(complete!)).toMatchObject({ problems: [], scenario: readScenario(text).scenario })
  }
})

test('the defaults are the values that the complete form calls so, each as it stands there', () => {
  for (const name of readdirSync(SCENARIOS).filter((file) => file.endsWith('.yaml'))) {
    const text = readFileSync(new URL(name, SCENARIOS), 'utf8')
    const { scenario, origins } = readScenario(text)
    const lines = resolveScenario(text, name).text!.matchAll(/^ *([\w-]+): (.+?) # default(?:\b:? ?(.*))?$/gm)
    const written = [...lines].map(([, field, value, why = '']) => JSON.stringify([field, value, why]))
    const told = defaultsOf({ scenario: scenario!, origins })
    expect(told.length).toBeGreaterThan(0)
    expect(told.map(({ field, value, why, places }) => [JSON.stringify([field, value, why]), places])).toEqual(
      [...new Set(written)].map((one) => [one, written.filter((other) => other === one).length]),
    )
  }
})

test('each value says where it came from', async () => {
  const corners = 'corners: { zones: [Z03, Z06], turn: left, lift: 1 s, lower: 1 s }'
  const products = 'products: { variants: { a: 50 %, b: 50 % }, options: { kit: { share: 20 %, adds: { fit: 5 s } } } }'
  const stops = 'stops: { short: { at: Fit, chance: 1 %, lasts: 20 s } }'
  const text = scenarioText(
    ['10 zones of 1 m', '[5 × 1 m, { name: Z06, length: 1.2 m }, 4 × 1 m]'],
    ['', corners],
    ['', products],
    ['', stops],
    ['', 'defaults: { station: { release: 2 s } }'],
  )
  await expect(resolveScenario(text, 'small.yaml').text).toMatchFileSnapshot('../../../../tests/golden/scenario/complete/small.yaml')
})

test('a file with errors has no complete form', () => {
  expect(resolveScenario(scenarioText(['count: 4', 'count: 40']), 'x')).toMatchObject({
    text: null,
    problems: [{ code: 'E_CARRIERS_FILL' }],
  })
})
