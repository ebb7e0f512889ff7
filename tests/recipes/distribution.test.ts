/** The recipe "Add a distribution": a kind with its file and its row alone is drawn, scaled, read, written and told. */
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { distributionKinds } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { filesUnder, TOP } from '../tidy/sources.ts'
import type { Tried } from './tryDistribution.ts'

const options = ['--import', 'tsx', '--conditions=loopwright-source', join(import.meta.dirname, 'tryDistribution.ts')]
const { stdout, stderr } = spawnSync(process.execPath, options, { cwd: TOP, encoding: 'utf8', maxBuffer: 2 ** 26 })
expect(stderr).toBe('')
const tried = JSON.parse(stdout) as Tried

const time = { kind: 'rayleigh', mode: 8 }
const moved = { kind: 'limited', of: time, shift: 2, min: null, max: null }

test('it keeps the contract of all kinds, in the table that draws', () => {
  expect(tried.contract).toEqual([])
  expect(tried.contractCut).toEqual([])
  expect(tried.contractBroken).not.toEqual([])
})

test('it is scaled, made longer and told', () => {
  expect(tried.scaled).toEqual({ kind: 'rayleigh', mode: 16 })
  expect(tried.longer).toEqual(moved)
  expect(tried.words).toBe('most often 8 s, Rayleigh; shifted by 2 s')
})

test('a scenario says it, and is written with it', () => {
  expect(tried.problems).toEqual([])
  expect(tried.line.stations[0]!.load![0]!.seconds).toEqual([moved])
  expect(tried.again).toEqual(tried.line)
  expect(tried.schema).toContain('most frequent time')
})

test('wrong values of it are found, each with its place', () => {
  expect(tried.ofZero).toEqual(['E_ZERO stations.S1.load.place.mode'])
  expect(tried.ofOtherKey).toHaveLength(2)
})

test('both engines run a line with it, to the same bits', () => {
  expect(tried.recursion).toEqual(tried.events)
  expect(tried.events.output).toBeGreaterThan(400)
})

test('no file decides by the kind of a distribution, but for the tables that say what else files may write', () => {
  const kinds = distributionKinds().map(({ kind }) => kind)
  const deciding = new RegExp(`\\bcase '(?:${kinds.join('|')})'`)
  const found = filesUnder('packages', /\.ts$/).filter(({ file, text }) => !file.endsWith('.test.ts') && deciding.test(text))
  expect(found.map(({ file }) => file)).toEqual([])
  expect(deciding.test("case 'weibull':")).toBe(true)
})

test('the reference of the format has a row for every kind', () => {
  const [reference] = filesUnder('packages/scenario', /^README\.md$/)
  const rows = reference!.text.split('\n').filter((line) => line.startsWith('| `'))
  const withoutRow = (kind: string): boolean => !rows.some((row) => row.slice(0, row.indexOf('|', 1)).includes(`\`${kind}\``))
  expect(
    distributionKinds()
      .map(({ kind }) => kind)
      .filter(withoutRow),
  ).toEqual([])
  expect(withoutRow('rayleigh')).toBe(true)
})
