/** A store in a folder: one file for each entry, never changed once it is there. README.md of this package tells the layout. */
import { randomBytes } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { engineMark } from './engineMark.ts'
import { entryFile, readEntryFile } from './entryFile.ts'
import { faultWords } from './faultWords.ts'
import type { Store } from './store.ts'

const ENTRY = /^(\d+)-(\d+)\.runs$/

/**
 * The store in a folder, for the engine that runs now. The folder is made with the first entry.
 * Each file is written beside its place and renamed, so nobody meets half of one, and processes that write at once do no harm.
 *
 * @example folderStore('runs').report // => { recalled: 0, kept: 0, damaged: 0, trouble: null }
 */
export function folderStore(folder: string): Store {
  const report = { recalled: 0, kept: 0, damaged: 0, trouble: null as string | null }
  const mine = join(folder, engineMark())
  const folderOf = (key: string): string => join(mine, key.slice(0, 2), key.slice(2))
  const attempt = <T>(doing: string, what: () => T): T | null => {
    try {
      return what()
    } catch (error) {
      report.trouble ??= `${doing}: ${faultWords(error)}`
      return null
    }
  }
  return {
    report,
    read(key) {
      const under = folderOf(key)
      const places = placesIn(under)
      return places.flatMap(({ name, from, to }) => {
        const file = attempt(`"${join(under, name)}" could not be read`, () => bytesOf(join(under, name)))
        if (file === null) return []
        const entry = readEntryFile(file, key)
        if (entry !== null && entry.from === from && entry.to === to) {
          report.recalled += to - from
          return [entry]
        }
        report.damaged += 1
        attempt(`"${join(under, name)}" is damaged and could not be removed`, () => rmSync(join(under, name), { force: true }))
        return []
      })
    },
    write(key, entry) {
      const under = folderOf(key)
      const name = join(under, `${entry.from}-${entry.to}.runs`)
      const part = `${name}.${randomBytes(6).toString('hex')}.part`
      const done = attempt(`"${folder}" could not be written`, () => {
        makeFolders(under)
        writeFileSync(part, entryFile(key, entry), { flag: 'wx' })
        renameSync(part, name)
        return true
      })
      if (done === true) report.kept += entry.to - entry.from
      else attempt('', () => rmSync(part, { force: true }))
    },
    drop(key, { from, to }) {
      report.damaged += 1
      attempt(`"${folder}" could not be written`, () => rmSync(join(folderOf(key), `${from}-${to}.runs`), { force: true }))
    },
  }
}

/** Each folder by itself: where a folder can never be made, making all at once would try for ever. */
function makeFolders(folder: string): void {
  if (existsSync(folder)) return
  const above = dirname(folder)
  if (above !== folder) makeFolders(above)
  try {
    mkdirSync(folder)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
  }
}

/** The entries' places, as the names of the files tell them. */
function placesIn(folder: string): { name: string; from: number; to: number }[] {
  let names: string[] = []
  try {
    names = readdirSync(folder)
  } catch {
    return []
  }
  return names
    .flatMap((name) => {
      const match = ENTRY.exec(name)
      return match === null ? [] : [{ name, from: Number(match[1]), to: Number(match[2]) }]
    })
    .sort((a, b) => a.from - b.from || a.to - b.to)
}

/** Empty where the file has gone since it was listed. */
function bytesOf(path: string): Uint8Array | null {
  try {
    return readFileSync(path)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null
    throw error
  }
}
