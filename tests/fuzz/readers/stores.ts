/** Entries of a store: damaged files, files with a right checksum and a wrong content, and stores of elsewhere that are put together. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join, relative } from 'node:path'
import { readScenario } from '@loopwright/scenario'
import { replicate } from '@loopwright/study'
import { folderStore, mergeStores } from '@loopwright/study/machine'
import { entryFile } from '../../../packages/study/src/store/entryFile.ts'
import { EXACT_LINE } from '../../helpers/scenarioTexts.ts'
import { mutated, one, type Whole, wholeOf } from '../mutated.ts'
import type { Reader } from '../reader.ts'

interface Kept {
  readonly folder: string
  /** of its one entry */
  readonly place: string
  readonly file: Buffer
  /** behind the heading */
  readonly content: Buffer
  readonly told: string
}

const line = readScenario(EXACT_LINE).scenario!.line
const runsFrom = async (folder: string): Promise<string> =>
  JSON.stringify(await replicate(line, { replications: 2 }, { seed: 'fuzz', workers: 0, store: folderStore(folder) }))

const newFolder = (): string => mkdtempSync(join(tmpdir(), 'loopwright-fuzz-'))

/** Made once: an entry of real runs, as a file. */
let kept: Promise<Kept> | null = null
async function makeEntry(): Promise<Kept> {
  const folder = newFolder()
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }))
  const told = await runsFrom(folder)
  const place = join(folder, readdirSync(folder, { recursive: true, encoding: 'utf8' }).find((name) => name.endsWith('.runs'))!)
  const file = readFileSync(place)
  return { folder, place, file, content: file.subarray(file.indexOf(10) + 1), told }
}
async function keptEntry(): Promise<Kept> {
  kept ??= makeEntry()
  return await kept
}

const numberOf = (whole: Whole): string => String(whole(2 ** 31))
const spoilt = (bytes: Buffer, whole: Whole): Buffer =>
  Buffer.from(mutated(bytes.toString('latin1'), [bytes.toString('latin1')], whole), 'latin1')

export const storeFile: Reader = {
  texts: ['1'],
  spoil: numberOf,
  every: 3,
  async try(text) {
    const { folder, place, file, told } = await keptEntry()
    mkdirSync(dirname(place), { recursive: true })
    writeFileSync(place, spoilt(file, wholeOf(Number(text))))
    return (await runsFrom(folder)) === told ? null : 'a spoilt entry changed what is told'
  },
}

/** Bounds as an ill will writes them. */
const BOUNDS = [0, 1, 2, 3, 50, 2 ** 31, 2 ** 53, -1, 0.5, Number.NaN]

/** A checksum shows no intent: numbers may be others, but a command neither ends on them nor tells what is no number. */
export const storeContent: Reader = {
  texts: ['1'],
  spoil: numberOf,
  every: 3,
  async try(text) {
    const { folder, place, content } = await keptEntry()
    const whole = wholeOf(Number(text))
    const key = basename(dirname(dirname(place))) + basename(dirname(place))
    const [from, to] = whole(2) === 0 ? [0, 2] : [one(BOUNDS, whole), one(BOUNDS, whole)]
    const bytes = whole(2) === 0 ? spoilt(content, whole) : randomNumbers(content, whole)
    const foreign = join(dirname(place), `${from}-${to}.runs`)
    mkdirSync(dirname(place), { recursive: true })
    rmSync(place, { force: true })
    writeFileSync(foreign, entryFile(key, { from, to, bytes }))
    const told = await runsFrom(folder)
    rmSync(foreign, { force: true })
    return /NaN|Infinity/.test(told) ? 'a number that is none is told' : null
  },
}

/** The same JSON or rows with one number or word in another place. */
function randomNumbers(content: Buffer, whole: Whole): Buffer {
  const text = content.toString('latin1')
  const found = [...text.matchAll(/-?\d+(?:\.\d+)?(?:e[+-]\d+)?/g)]
  if (found.length === 0) return content
  const { index, 0: number } = one(found, whole)
  const other = one(['-1', '1e300', 'null', '"x"', '[]', '{}', '{"__proto__":{"x":1}}', '1e999', 'true'], whole)
  return Buffer.from(text.slice(0, index) + other + text.slice(index + number.length), 'latin1')
}

/** A store of elsewhere, spoilt, is put into one of ours: whatever its files are called, nothing lands beside it. */
export const storeMerged: Reader = {
  texts: ['1'],
  spoil: numberOf,
  every: 10,
  async try(text) {
    const { folder, place, file } = await keptEntry()
    const whole = wholeOf(Number(text))
    const home = newFolder()
    try {
      const [from, into] = [join(home, 'from'), join(home, 'into')]
      const path = relative(folder, place).split('/')
      const at = whole(path.length)
      const name = mutated(path[at]!, ['..', '...', 'a'.repeat(300), '0-2.runs'], whole).replaceAll(/[/\0\ud800-\udfff]/g, '')
      if (whole(2) === 0 && name !== '' && name !== '.' && name !== '..' && Buffer.byteLength(name) < 255) path[at] = name
      mkdirSync(join(from, ...path.slice(0, -1)), { recursive: true })
      writeFileSync(join(from, ...path), whole(2) === 0 ? file : spoilt(file, whole))
      mergeStores([from], into)
      const strange = readdirSync(home).filter((each) => each !== 'from' && each !== 'into')
      return strange.length === 0 ? null : `"${strange[0]}" was written`
    } finally {
      rmSync(home, { recursive: true, force: true })
    }
  },
}
