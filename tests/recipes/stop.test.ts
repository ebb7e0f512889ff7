/** The recipe "Add a kind of stop" names every file that knows the newest kind, a safety stop. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { filesUnder, isTest, TOP } from '../tidy/sources.ts'

const recipe = readFileSync(join(TOP, 'packages/line/src/stops/README.md'), 'utf8')
const named = [...recipe.matchAll(/`(packages\/[\w/.]+)`/g)].map((found) => found[1]!)
const knowing = filesUnder('packages', /\.ts$/).filter(({ file, text }) => !isTest(file) && /safety/i.test(text))

/** Files of the public names, and what a stop changes for people alone. */
const ELSEWHERE = /\/index\.ts$/

const missing = (places: readonly string[]): string[] =>
  knowing
    .map(({ file }) => file)
    .filter((file) => !ELSEWHERE.test(file) && !places.some((place) => file === place || file.startsWith(`${place}/`)))

test('every file that knows safety stops is named, or its folder is', () => {
  expect(knowing.length).toBeGreaterThan(20)
  expect(missing(named)).toEqual([])
})

test('a place that the recipe forgets is found', () => {
  expect(missing(named.filter((place) => place !== 'packages/line/src/bounds'))).toContain('packages/line/src/bounds/stopShares.ts')
})
