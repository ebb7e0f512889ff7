/** Entries of a store: damaged files, files with a right checksum and a wrong content, and stores of elsewhere that are put together. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join, relative } from 'node:path'
import { readScenario } from '@loopwright/scenario'
import { folderStore, mergeStores } from '@loopwright/study/machine'
import { callingThread } from '../../../packages/study/src/runs/callingThread.ts'
import type { Kept as Want } from '../../../packages/study/src/runs/task.ts'
import { entryFile } from '../../../packages/study/src/store/entryFile.ts'
import { keptPool } from '../../../packages/study/src/store/keptPool.ts'
import { EXACT_LINE } from '../../helpers/scenarioTexts.ts'
import { mutated, one, type Whole, wholeOf } from '../mutated.ts'
import type { Reader } from '../reader.ts'

interface Kept {
  readonly want: Want
  readonly folder: string
  /** of its one entry */
  readonly place: string
  readonly file: Buffer
  /** behind the heading */
  readonly content: Buffer
  readonly told: string
}

const line = readScenario(EXACT_LINE).scenario!.line
const WANTS: readonly Want[] = ['rows', 'results', 'passages']
const runsFrom = async (folder: string, want: Want): Promise<string> => {
  const pool = keptPool(callingThread(), folderStore(folder))
  return JSON.stringify(await pool.run(0, { line: pool.line(line), carriers: line.carriers.count, seed: 'fuzz', from: 0, to: 2, want }))
}

const newFolder = (): string => mkdtempSync(join(tmpdir(), 'loopwright-fuzz-'))

/** Made once for each form: an entry of real runs, as a file. */
const kept = new Map<Want, Promise<Kept>>()
async function makeEntry(want: Want): Promise<Kept> {
  const folder = newFolder()
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }))
  const told = await runsFrom(folder, want)
  const place = join(folder, readdirSync(folder, { recursive: true, encoding: 'utf8' }).find((name) => name.endsWith('.runs'))!)
  const file = readFileSync(place)
  return { want, folder, place, file, content: file.subarray(file.indexOf(10) + 1), told }
}
async function keptEntry(want: Want): Promise<Kept> {
  const made = kept.get(want) ?? makeEntry(want)
  kept.set(want, made)
  return await made
}

const spoilt = (bytes: Buffer, whole: Whole): Buffer =>
  Buffer.from(mutated(bytes.toString('latin1'), [bytes.toString('latin1')], whole), 'latin1')

/** A reader of texts that are numbers, of which all that is spoilt follows, and of the entry of real runs. */
const ofEntry = (every: number, tried: (entry: Kept, whole: Whole) => Promise<string | null>): Reader => ({
  texts: ['1'],
  spoil: (whole) => String(whole(2 ** 31)),
  every,
  async try(text) {
    const whole = wholeOf(Number(text))
    return await tried(await keptEntry(one(WANTS, whole)), whole)
  },
})

export const storeFile = ofEntry(3, async ({ want, folder, place, file, told }, whole) => {
  mkdirSync(dirname(place), { recursive: true })
  writeFileSync(place, spoilt(file, whole))
  return (await runsFrom(folder, want)) === told ? null : 'a spoilt entry changed what is told'
})

/** Bounds as an ill will writes them. */
const BOUNDS = [0, 1, 2, 3, 50, 2 ** 31, 2 ** 53, -1, 0.5, Number.NaN]

/** A checksum shows no intent: numbers may be others, but a command neither ends on them nor tells what is no number. */
export const storeContent = ofEntry(3, async ({ want, folder, place, content }, whole) => {
  const key = basename(dirname(dirname(place))) + basename(dirname(place))
  const [from, to] = whole(2) === 0 ? [0, 2] : [one(BOUNDS, whole), one(BOUNDS, whole)]
  const bytes = whole(2) === 0 ? spoilt(content, whole) : randomNumbers(content, whole)
  const foreign = join(dirname(place), `${from}-${to}.runs`)
  mkdirSync(dirname(place), { recursive: true })
  rmSync(place, { force: true })
  writeFileSync(foreign, entryFile(key, { from, to, bytes }))
  const told = await runsFrom(folder, want)
  rmSync(foreign, { force: true })
  return /NaN|Infinity/.test(told) ? 'a number that is none is told' : null
})

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
export const storeMerged = ofEntry(10, async ({ folder, place, file }, whole) => {
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
})
