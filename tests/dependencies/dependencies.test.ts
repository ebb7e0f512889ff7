/** The work of others that the project stands on: few, each with a reason, at exact versions, under licences that let it be used, and without scripts that run when it is installed. */
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { askedFor, lockedPackages } from './dependencies.ts'

const root = new URL('../../', import.meta.url)
const at = (path: string): string => fileURLToPath(new URL(path, root))
const lockText = readFileSync(at('package-lock.json'), 'utf8')
const locked = lockedPackages(lockText)
const asked = askedFor(['package.json', ...manifests()].map(at))

function manifests(): string[] {
  return (JSON.parse(readFileSync(at('package.json'), 'utf8')) as { workspaces: string[] }).workspaces.map(
    (folder) => `${folder}/package.json`,
  )
}

/** Terms that ask for no more than a notice; MPL-2.0 asks besides for the source of its own files where they are changed, which nobody does here. */
const LICENCES = new Set([
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  '0BSD',
  'Unlicense',
  'Zlib',
  'MPL-2.0',
  'BlueOak-1.0.0',
  'PSF-2.0',
  'CC0-1.0',
  'Python-2.0',
  'CC-BY-4.0',
])

/** What names its terms in a file of its own: which, and what they are. */
const READ_BY_HAND: Readonly<Record<string, string>> = {
  'dejavu-fonts-ttf': 'the Bitstream Vera terms: free to use, copy and embed; a changed font needs another name',
}

/** Scripts that a package brings and nothing here needs: the set works with `npm ci --ignore-scripts`. */
const SCRIPTS_NOT_NEEDED: Readonly<Record<string, string>> = {
  esbuild: 'a check that its binary, a package of its own, is there',
  'msgpackr-extract': 'builds a quicker reader of texts, which msgpackr does without',
  fsevents: 'for macOS alone, where it brings its binary with it',
}

/** One of the terms of "(A OR B)", all of "A AND B". */
function isFree(expression: string): boolean {
  const plain = expression.replaceAll(/[()]/g, '')
  if (plain.includes(' OR ')) return plain.split(' OR ').some((part) => isFree(part))
  return plain.split(' AND ').every((part) => LICENCES.has(part.trim()))
}

test('versions are exact', () => {
  const loose = asked.filter(({ version }) => !/^(?:npm:[^@]*@?[^@]+@)?\d+\.\d+\.\d+(?:-[\w.]+)?$/.test(version))
  expect(loose).toEqual([])
  expect(asked.length).toBeGreaterThan(20)
})

test('each has its reason in packages/README.md', () => {
  const table = readFileSync(at('packages/README.md'), 'utf8')
  const told = new Set(
    table
      .split('\n')
      .filter((line) => line.startsWith('|'))
      .flatMap((line) =>
        line
          .split('|')[2]!
          .split(/,| \(version \d+\)/)
          .map((name) => name.trim()),
      ),
  )
  expect([...new Set(asked.map(({ name }) => name))].filter((name) => !told.has(name))).toEqual([])
  expect(
    [...told].filter((name) => name !== '' && name !== 'package' && !/^-+$/.test(name) && !asked.some((each) => each.name === name)),
  ).toEqual([])
})

test('no package has a script that its installation needs', () => {
  const scripts = locked.filter(({ installScript, name }) => installScript && !Object.hasOwn(SCRIPTS_NOT_NEEDED, name))
  expect(scripts).toEqual([])
})

test('every licence is one of those that let the project be used by anyone', () => {
  const odd = locked.filter(({ licence, name }) => !Object.hasOwn(READ_BY_HAND, name) && (licence === null || !isFree(licence)))
  expect(odd.map(({ name, licence }) => `${name}: ${licence}`)).toEqual([])
  expect(isFree('GPL-3.0-only')).toBe(false)
  expect(isFree('(MIT AND GPL-3.0-only)')).toBe(false)
  for (const name of Object.keys(READ_BY_HAND)) expect(existsSync(at(`node_modules/${name}`)), name).toBe(true)
})

test('the list of what the packages need when they run is the one that was read', async () => {
  const lines = locked.filter(({ dev }) => !dev).map(({ name, version, licence }) => `${name} ${version}  ${READ_BY_HAND[name] ?? licence}`)
  await expect(`${[...new Set(lines)].join('\n')}\n`).toMatchFileSnapshot('licences.txt')
})
