import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readCases } from './vectors.ts'

const folder = new URL('.', import.meta.url)

test('every kind of case in every file of vectors is asked for by a test', () => {
  const tests = readdirSync(folder)
    .filter((name) => name.endsWith('.test.ts') && name !== 'everyVector.test.ts')
    .map((name) => readFileSync(new URL(name, folder), 'utf8'))
    .join('\n')
  const asked = (file: string, kind: string): boolean =>
    tests.includes(`readCases('${file}')`) ||
    tests.includes(`readCases('${file}', '${kind}')`) ||
    (file === 'fitting' && /^(lognormal|gamma|weibull)( with shift)?$/.test(kind))
  const missing = readdirSync(new URL('vectors/', folder)).flatMap((name) => {
    const file = name.replace(/\.json$/, '')
    const kinds = new Set(readCases(file).map((one) => one.kind))
    return [...kinds].filter((kind) => !asked(file, kind)).map((kind) => `${file}: ${kind}`)
  })
  expect(missing).toEqual([])
})
