import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, describe, expect, test } from 'vitest'
import { NotebookFaults } from './fault.ts'
import { lineOf, loadNotebook, placeOf } from './loadNotebook.ts'

const folder = mkdtempSync(join(tmpdir(), 'loopwright-test-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const INDEX = pathToFileURL(join(import.meta.dirname, '../index.ts')).href
const ours = (name: string): string | null => (name === 'notebook' ? INDEX : null)

function file(name: string, text: string): string {
  const path = join(folder, name)
  mkdirSync(join(path, '..'), { recursive: true })
  writeFileSync(path, text)
  return path
}

const importFile = (address: string): Promise<unknown> => {
  process.setSourceMapsEnabled(true)
  return import(address)
}

const load = (name: string, text: string) => loadNotebook(file(name, text), { ours, importFile })
const faultsOf = async (name: string, text: string) => {
  const error: unknown = await load(name, text).catch((each: unknown) => each)
  if (!(error instanceof NotebookFaults)) throw error
  return error.faults
}

const NOTEBOOK = `import { notebook } from '@loopwright/notebook'
import { twice } from './own/helper.ts'

interface Unused {
  readonly a: number
}

export default notebook({ title: 'A', scenario: 'a.yaml' }, async ({ prose }) => {
  const size: number = twice(2)
  prose(String(size))
})
export const here = import.meta.url
export const wrong = (): never => {
  throw new Error('here')
}
`

describe.each([
  ['no package', null],
  ['a package of modules', '{ "type": "module" }'],
  ['a package of the older kind', '{ "type": "commonjs" }'],
])('in a folder of %s', (name, description) => {
  const home = name.replaceAll(' ', '-')
  test('a notebook is loaded with what it imports, and knows its own places', async () => {
    if (description !== null) file(`${home}/package.json`, description)
    file(`${home}/own/helper.ts`, 'export const twice = (value: number): number => 2 * value\n')
    const { exports, files } = await load(`${home}/study.ts`, NOTEBOOK)
    const module = exports as { default: { kind: string; head: object }; here: string; wrong: () => never }
    expect(module.default).toMatchObject({ kind: 'notebook', head: { title: 'A' } })
    expect(module.here).toBe(pathToFileURL(join(folder, home, 'study.ts')).href)
    expect(files).toEqual([join(folder, home, 'study.ts'), join(folder, home, 'own/helper.ts')])
    const place = ((): unknown => {
      try {
        return module.wrong()
      } catch (error) {
        return placeOf(error)
      }
    })()
    expect(place).toMatchObject({ line: 14, column: 9, source: "  throw new Error('here')" })
  })
})

test('packages of the user are imported from where they lie', async () => {
  file('user/node_modules/small/package.json', '{ "name": "small", "type": "module", "exports": "./index.js" }')
  file('user/node_modules/small/index.js', 'export const small = import.meta.url\n')
  const { exports } = await load('user/a.ts', "export { small } from 'small'\nexport { sep } from 'node:path'\n")
  expect((exports as { small: string }).small).toBe(pathToFileURL(join(folder, 'user/node_modules/small/index.js')).href)
})

test('what is no program is told with its place', async () => {
  const [fault, ...others] = await faultsOf('syntax.ts', "const a = 'ä'\nconst ü = 'ü' )\n")
  expect(others).toEqual([])
  expect(fault).toMatchObject({ line: 2, column: 15, source: "const ü = 'ü' )" })
  expect(fault!.message).not.toBe('')
})

test('all that is imported and not there is told', async () => {
  const faults = await faultsOf('imports.ts', "import './a.ts'\nimport b from 'no-such-package'\nconsole.log(b)\n")
  expect(faults.map(({ line, column }) => [line, column])).toEqual([
    [1, 8],
    [2, 15],
  ])
})

test('lines as they were when the file was loaded; errors from elsewhere have no place', async () => {
  const path = file('lines.ts', 'export const a = 1\nexport const b = 2\n')
  await loadNotebook(path, { ours, importFile })
  file('lines.ts', 'changed\n')
  expect([lineOf(path, 2), lineOf(path, 9), lineOf('elsewhere.ts', 1)]).toEqual(['export const b = 2', '', ''])
  expect([placeOf(new Error('here')), placeOf('text')]).toEqual([null, null])
})
