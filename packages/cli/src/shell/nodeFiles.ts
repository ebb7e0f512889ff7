/** Files as the command reads and writes them: regular ones, whole or not at all. */
import { randomBytes } from 'node:crypto'
import { closeSync, constants, fstatSync, openSync, readFileSync, realpathSync } from 'node:fs'
import { lstat, mkdir, open, readdir, readFile, realpath, rename, rm, stat } from 'node:fs/promises'
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path'
import { visibleLine } from '@loopwright/charts/table'
import { Failure, Misuse } from './shell.ts'

/** Loaded when something fails: it stands beside the engine, whose code a start that goes well has no use for yet. */
const wordsOf = async (error: unknown): Promise<string> => (await import('@loopwright/study/machine')).faultWords(error)

/** Files above this size are no scenarios; bytes. */
export const READ_MAX = 50 * 2 ** 20

/**
 * The text of a file.
 *
 * @throws Misuse   where there is none, or it is a folder, a device, or larger than 50 MB
 * @throws Failure  where the system refuses
 */
export async function readWhole(path: string): Promise<string> {
  const bytes = await bytesOf(path, READ_MAX)
  const text = textOf(bytes)
  if (text !== null) return text
  throw new Misuse(
    `"${visibleLine(path)}" is not written in UTF-8: line ${foreignLine(bytes)} holds a sign of another encoding; save it anew, with the encoding UTF-8`,
  )
}

/** UTF-16 by its mark, else UTF-8; null where it is neither. */
function textOf(bytes: Uint8Array): string | null {
  const [first, second] = bytes
  const marked = first === 0xff && second === 0xfe ? 'utf-16le' : first === 0xfe && second === 0xff ? 'utf-16be' : null
  try {
    return new TextDecoder(marked ?? 'utf-8', { fatal: marked === null, ignoreBOM: marked === null }).decode(bytes)
  } catch {
    return null
  }
}

/** The first line that is no UTF-8, from 1. */
function foreignLine(bytes: Buffer): number {
  let line = 1
  for (let from = 0; ; line++) {
    const end = bytes.indexOf(10, from)
    if (end < 0 || textOf(bytes.subarray(from, end)) === null) return line
    from = end + 1
  }
}

/** Tables above this size are refused before they are read; bytes. */
export const TABLE_BYTES_MAX = 20 * 2 ** 20

/**
 * The bytes of a table.
 *
 * @throws Misuse   where there is none, it is a folder or a device, or it is larger than a table of people
 * @throws Failure  where the system refuses
 */
export async function readWholeBytes(path: string): Promise<Uint8Array> {
  return await bytesOf(path, TABLE_BYTES_MAX)
}

/**
 * Names of the files in a folder, in order.
 *
 * @throws Misuse   where there is none
 * @throws Failure  where the system refuses
 */
export async function listFolder(path: string): Promise<string[]> {
  try {
    const entries = await readdir(path, { withFileTypes: true })
    return entries.flatMap((entry) => (entry.isDirectory() ? [] : [entry.name])).sort()
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    if (code === 'ENOENT') throw new Misuse(`there is no folder "${visibleLine(path)}" here (looked in ${process.cwd()})`)
    if (code === 'ENOTDIR') throw new Misuse(`"${visibleLine(path)}" is a file; name the folder that it is in`)
    const { faultWords } = await import('@loopwright/study/machine')
    throw new Failure(`"${visibleLine(path)}" could not be read: ${faultWords(error)}`)
  }
}

async function bytesOf(path: string, most: number): Promise<Buffer> {
  try {
    const found = await stat(path)
    if (found.isDirectory()) throw new Misuse(`"${visibleLine(path)}" is a folder; name a file in it`)
    // a pipe from another command is read to its end; a device may have none
    if (!found.isFile() && !found.isFIFO()) throw new Misuse(`"${visibleLine(path)}" is a device; name a file`)
    if (found.size > most)
      throw new Misuse(`"${visibleLine(path)}" has ${Math.round(found.size / 2 ** 20)} MB; files of up to ${most / 2 ** 20} MB are read`)
    return await readFile(path)
  } catch (error) {
    if (error instanceof Misuse) throw error
    const { code } = error as NodeJS.ErrnoException
    if (code === 'ENOENT' || code === 'ENOTDIR')
      throw new Misuse(`there is no file "${visibleLine(path)}" here (looked in ${process.cwd()})`)
    throw new Failure(`"${visibleLine(path)}" could not be read: ${await wordsOf(error)}`)
  }
}

/**
 * The text of a file that a scenario or a decision names; null where there is none.
 *
 * Either may come from anybody, so that it reads regular files only, in its own folder, in the one where the command runs, or below them.
 *
 * @throws Misuse  where the file lies elsewhere, is a device or a pipe, or is larger than 50 MB
 */
export function readBeside(namedIn: string, path: string): string | null {
  const home = dirname(namedIn)
  let file: number | null = null
  const refuse = (why: string): never => {
    throw new Misuse(`"${visibleLine(namedIn)}" names the file "${visibleLine(path)}", ${why}`)
  }
  try {
    const place = realpathSync(resolve(home, path))
    if (![home, '.'].some((folder) => isBelow(realpathSync(folder), place)))
      refuse(
        'which lies outside of its folder and of the one where the command runs; put a copy beside it, or run the command from a folder above both',
      )
    // without O_NONBLOCK opening a pipe waits for somebody who writes
    file = openSync(place, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0))
    const found = fstatSync(file)
    if (!found.isFile()) refuse('which is no regular file')
    if (found.size > READ_MAX) refuse(`which has ${Math.round(found.size / 2 ** 20)} MB; files of up to ${READ_MAX / 2 ** 20} MB are read`)
    // as tables are read: what is no UTF-8 has the letters of western Windows
    const bytes = readFileSync(file)
    return textOf(bytes) ?? new TextDecoder('windows-1252').decode(bytes)
  } catch (error) {
    if (error instanceof Misuse) throw error
    return null
  } finally {
    if (file !== null) closeSync(file)
  }
}

const isBelow = (folder: string, path: string): boolean => {
  const way = relative(folder, path)
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way)
}

/** Where a text goes: the file that a link leads to, and the rights that it has already. */
interface Target {
  readonly path: string
  /** null: it is not there yet, and gets the usual ones */
  readonly mode: number | null
}

async function targetOf(path: string): Promise<Target> {
  const there = await stat(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT' || error.code === 'ENOTDIR') return null
    throw error
  })
  if (there === null) return { path: await linkedTo(path), mode: null }
  if (there.isDirectory()) throw new Misuse(`"${visibleLine(path)}" is a folder; name a file`)
  if (!there.isFile()) throw new Misuse(`"${visibleLine(path)}" is a device or a pipe; name a file`)
  return { path: await realpath(path), mode: there.mode & 0o777 }
}

/** A link to a file that is not there yet would be replaced by the file: it leads somewhere, but nobody knows whether it should. */
async function linkedTo(path: string): Promise<string> {
  const link = await lstat(path).catch(() => null)
  if (link?.isSymbolicLink() === true) throw new Misuse(`"${visibleLine(path)}" is a link that leads nowhere; name the file itself`)
  return path
}

/** Each folder by itself: where a folder can never be made, making all at once would try for ever. */
async function makeFolders(folder: string): Promise<void> {
  const there = await stat(folder).catch(() => null)
  if (there?.isDirectory() === true) return
  const above = dirname(folder)
  if (above !== folder) await makeFolders(above)
  await mkdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'EEXIST') throw error
  })
}

const besideName = (path: string): string => join(dirname(path), `.${basename(path)}.${randomBytes(4).toString('hex')}.part`)

/**
 * Writes a file beside its place and renames it, so that nobody meets half of it. A file that is there keeps its rights; a link is followed.
 *
 * @throws Misuse   where the name is that of a folder, a device, a pipe, or a link that leads nowhere
 * @throws Failure  where the system refuses; nothing is left behind
 */
export async function writeWhole(path: string, text: string | Uint8Array): Promise<void> {
  let part: string | null = null
  try {
    const target = await targetOf(path)
    await makeFolders(dirname(target.path))
    part = besideName(target.path)
    const file = await open(part, 'wx')
    try {
      if (target.mode !== null) await file.chmod(target.mode)
      await file.writeFile(text)
    } finally {
      await file.close()
    }
    await rename(part, target.path)
  } catch (error) {
    if (part !== null) await rm(part, { force: true }).catch(() => {})
    if (error instanceof Misuse) throw error
    throw new Failure(`"${visibleLine(path)}" could not be written: ${await wordsOf(error)}`)
  }
}

/**
 * Tries whether a file could be written, and leaves nothing behind but its folder.
 *
 * @throws Misuse, Failure  as `writeWhole`
 */
export async function checkWritable(path: string): Promise<void> {
  try {
    const target = await targetOf(path)
    await makeFolders(dirname(target.path))
    const part = besideName(target.path)
    await (await open(part, 'wx')).close()
    await rm(part)
  } catch (error) {
    if (error instanceof Misuse) throw error
    throw new Failure(`"${visibleLine(path)}" cannot be written: ${await wordsOf(error)}`)
  }
}
