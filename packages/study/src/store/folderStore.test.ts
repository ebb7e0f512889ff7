import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { folderStore } from './folderStore.ts'
import { storeContract } from './storeContract.ts'

const top = mkdtempSync(join(tmpdir(), 'loopwright-store-'))
afterAll(() => rmSync(top, { recursive: true }))
let made = 0
const newFolder = (): string => {
  made += 1
  return join(top, String(made))
}
const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isFile())
const KEY = 'ab'.repeat(32)
const entry = { from: 0, to: 2, bytes: Uint8Array.from({ length: 100 }, (_, index) => index) }

storeContract('the store in a folder', () => {
  const folder = newFolder()
  return { store: folderStore(folder), again: () => folderStore(folder) }
})

describe('damage is noticed, whatever it is; the entry goes, and can be written again', () => {
  const damages: Record<string, (file: Uint8Array) => Uint8Array | string> = {
    'a bit turned in the content': (file) => file.with(-1, file.at(-1)! ^ 1),
    'a bit turned in the heading': (file) => file.with(25, file[25]! ^ 1),
    'cut off': (file) => file.slice(0, -1),
    'cut off in the heading': (file) => file.slice(0, 20),
    'one byte more': (file) => Uint8Array.from([...file, 0]),
    empty: () => '',
    'another text': () => 'hello\n',
    'another version': (file) => new TextDecoder('latin1').decode(file).replace('loopwright-store 1', 'loopwright-store 2'),
  }
  test.each(Object.entries(damages))('%s', (_, damage) => {
    const folder = newFolder()
    folderStore(folder).write(KEY, entry)
    const [path] = filesIn(folder)
    writeFileSync(path!, damage(new Uint8Array(readFileSync(path!))))
    const store = folderStore(folder)
    expect(store.read(KEY)).toEqual([])
    expect(store.report).toMatchObject({ damaged: 1, recalled: 0, trouble: null })
    expect(filesIn(folder)).toEqual([])
    store.write(KEY, entry)
    expect(store.read(KEY)).toEqual([entry])
  })

  test('any single bit', () => {
    const folder = newFolder()
    folderStore(folder).write(KEY, entry)
    const [path] = filesIn(folder)
    const whole = new Uint8Array(readFileSync(path!))
    for (let at = 0; at < whole.length; at += 1) {
      writeFileSync(path!, whole.with(at, whole[at]! ^ (1 << (at % 8))))
      expect(folderStore(folder).read(KEY), `byte ${at}`).toEqual([])
    }
  })

  test('a file under the name of another', () => {
    const folder = newFolder()
    folderStore(folder).write(KEY, entry)
    const [path] = filesIn(folder)
    writeFileSync(join(dirname(path!), basename(path!).replace('0-2', '4-6')), readFileSync(path!))
    const store = folderStore(folder)
    expect(store.read(KEY)).toEqual([entry])
    expect(store.report.damaged).toBe(1)
  })
})

test('half-written files of a process that was killed are never read', () => {
  const folder = newFolder()
  folderStore(folder).write(KEY, entry)
  const [path] = filesIn(folder)
  writeFileSync(`${path!}.0123456789ab.part`, readFileSync(path!).subarray(0, 50))
  const store = folderStore(folder)
  expect(store.read(KEY)).toEqual([entry])
  expect(store.report.damaged).toBe(0)
})

test('a folder that cannot be made is told, and stops nothing', () => {
  const file = newFolder()
  writeFileSync(file, '')
  const store = folderStore(join(file, 'in'))
  store.write(KEY, entry)
  expect(store.read(KEY)).toEqual([])
  expect(store.report).toMatchObject({ kept: 0, trouble: expect.stringContaining('a part of the path is a file') })
})

// skipped because only Linux has a folder in which no folder can ever be made
test.skipIf(process.platform !== 'linux')('where no folder can ever be made it ends, and is told', () => {
  const store = folderStore('/proc/store/in')
  store.write(KEY, entry)
  expect(store.report).toMatchObject({ kept: 0, trouble: expect.stringContaining('could not be written') })
})
